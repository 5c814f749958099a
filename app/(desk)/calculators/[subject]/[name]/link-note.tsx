import { say } from '@/lib/words/say'
import type { Sayer } from '../../sayer'
import { queryOf, type Typed } from './typed'

/** Beyond it mail programs and proxies cut addresses off. */
const mostForAll = 2_000

/** The address that holds this question, to be passed on. */
export function LinkNote({ id, typed, sayer: { text, language } }: { id: string; typed: Typed; sayer: Sayer }) {
  const address = `/calculators/${id}?${queryOf(typed)}`
  return (
    <p className="mt-6 text-small text-ink-2 print:hidden">
      <a href={address}>{text.link}</a>{' '}
      {address.length > mostForAll ? say(text.longLink, language, { length: address.length }) : null}
    </p>
  )
}
