import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { problemsOfInput } from '@/lib/kitchen/problems-of-input'
import { emailAddress, line, note } from '@/lib/kitchen/text.input'

const schema = z.strictObject({
  name: line(10),
  email: emailAddress,
  role: z.enum(['owner', 'shift_baker']),
  pieces: z.int().min(1).max(99),
  massG: z.number().gt(0).max(5000),
  text: note(5),
  lines: z.array(z.strictObject({ massG: z.number() })).min(1),
})
const good = {
  name: 'Ayo',
  email: 'a@b.example',
  role: 'owner',
  pieces: 4,
  massG: 500,
  text: '',
  lines: [{ massG: 1 }],
}

function problems(change: Record<string, unknown>) {
  const read = schema.safeParse({ ...good, ...change }, { reportInput: true })
  return read.success ? [] : problemsOfInput(read.error).map(({ path, code }) => `${path}: ${code}`)
}

describe('what is wrong with an input, in our own codes', () => {
  it('takes what is right', () => {
    expect(problems({})).toEqual([])
  })

  it.each<[Record<string, unknown>, string]>([
    [{ name: '' }, 'name: missing'],
    [{ name: '   ' }, 'name: missing'],
    [{ name: undefined }, 'name: missing'],
    [{ name: 'x'.repeat(11) }, 'name: too-long'],
    [{ name: 'a\u0000b' }, 'name: unreadable'],
    [{ name: 'a\ud800b' }, 'name: unreadable'],
    [{ name: 'a\nb' }, 'name: unreadable'],
    // General categories and Default_Ignorable_Code_Point as in the Unicode Character Database (UAX #44).
    [{ name: '\u200b\u2060' }, 'name: unreadable'],
    [{ name: '\u200d' }, 'name: unreadable'],
    [{ name: '\u3164' }, 'name: unreadable'],
    [{ name: '\u2800' }, 'name: unreadable'],
    [{ name: 'Ayo\u200bb' }, 'name: unreadable'],
    [{ name: 'Ayo\u202eb' }, 'name: unreadable'],
    [{ name: 'Ayo\u2066b' }, 'name: unreadable'],
    [{ name: 'a\u0007b' }, 'name: unreadable'],
    [{ name: 'a\tb' }, 'name: unreadable'],
    [{ name: 'a\u2028b' }, 'name: unreadable'],
    [{ text: 'a\u0007' }, 'text: unreadable'],
    [{ text: 'a\u202eb' }, 'text: unreadable'],
    [{ name: { not: '' } }, 'name: wrong-form'],
    [{ email: 'nobody' }, 'email: not-email'],
    [{ role: 'admin' }, 'role: wrong-choice'],
    [{ pieces: 0 }, 'pieces: too-small'],
    [{ pieces: 100 }, 'pieces: too-big'],
    [{ pieces: 1.5 }, 'pieces: not-whole'],
    [{ pieces: '4' }, 'pieces: not-a-number'],
    [{ massG: 0 }, 'massG: not-above'],
    [{ massG: Number.NaN }, 'massG: not-a-number'],
    [{ massG: Number.POSITIVE_INFINITY }, 'massG: not-a-number'],
    [{ massG: 1e308 }, 'massG: too-big'],
    [{ text: '123456' }, 'text: too-long'],
    [{ lines: [] }, 'lines: too-few'],
    [{ lines: [{ massG: 1 }, { massG: 'x' }] }, 'lines.1.massG: not-a-number'],
    [{ lines: [{ massG: 1, approvedAt: 'now' }] }, 'lines.0.approvedAt: unknown-field'],
    [{ bakeryId: 'other' }, 'bakeryId: unknown-field'],
  ])('%j', (change, expected) => {
    expect(problems(change)).toEqual([expected])
  })

  it.each(['Zoë', 'नमक', 'نمک\u200cدان', 'مها', '塩', '👩\u200d🍳', '☕\ufe0f'])('takes the name %s', (name) => {
    expect(problems({ name })).toEqual([])
  })

  it('takes a note on several lines with tabs', () => {
    expect(problems({ text: 'a\r\n\tb' })).toEqual([])
  })

  it('names every fault at once', () => {
    expect(problems({ name: '', email: 'x', massG: -1, role: '' })).toHaveLength(4)
  })
})
