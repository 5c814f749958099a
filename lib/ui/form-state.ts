/** What a form knows after it was sent: enough to show every fault at its field and to lose nothing typed. */
export type FormState = {
  /** Grows with each answer, so that the fields take up what was typed. */
  answers: number
  values: Readonly<Record<string, string>>
  problems: Readonly<Record<string, string>>
  /** Why it was refused, in words. */
  refusal: string | null
  /** Refused because somebody else changed the same thing meanwhile. */
  isStale: boolean
  /** With that: the fields as the page gave them before, by which what the other changed is told. */
  given: Readonly<Record<string, string>> | null
  /** Set when it was done; may carry what is shown only now, such as a link. */
  done: Readonly<Record<string, string>> | null
}

export const emptyFormState: FormState = {
  answers: 0,
  values: {},
  problems: {},
  refusal: null,
  isStale: false,
  given: null,
  done: null,
}

export type FormAction = (state: FormState, form: FormData) => Promise<FormState>

/** Name of what says which form it is, so that one that is sent twice counts once. Nobody types it, so it begins as the framework's own do. */
export const formIdName = '$formId'
