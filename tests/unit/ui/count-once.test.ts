import { expect, test } from 'vitest'
import { countOnce } from '@/lib/ui/count-once'
import { emptyFormState, formIdName, type FormState } from '@/lib/ui/form-state'

/** Sends one form several times, with the answers that the server gives. @returns the ids under which it was sent */
async function idsOf(answers: (FormState | Error)[]): Promise<string[]> {
  const ids: string[] = []
  const action = countOnce(
    async (_, form) => {
      const id = form.get(formIdName)
      ids.push(typeof id === 'string' ? id : '')
      const answer = answers[ids.length - 1]
      if (answer instanceof Error) throw answer
      return answer!
    },
    { current: null },
  )
  for (let i = 0; i < answers.length; i++) await action(emptyFormState, new FormData()).catch(() => undefined)
  return ids
}

const refused = { ...emptyFormState, refusal: 'Nothing was kept.' }
const done = { ...emptyFormState, done: {} }

test('a form keeps its id over refusals and over no answer at all, and is another one once it was done', async () => {
  const [first, second, third, after] = await idsOf([refused, new Error('no answer'), done, refused])
  expect(first).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/)
  expect([second, third]).toEqual([first, first])
  expect(after).not.toBe(first)
})

test('two forms have two ids', async () => {
  expect((await idsOf([done]))[0]).not.toBe((await idsOf([done]))[0])
})
