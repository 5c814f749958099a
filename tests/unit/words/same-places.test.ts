import { expect, test } from 'vitest'
import type { SamePlaces, WordsOf } from '@/lib/words/same-places'
import { say, sayName } from '@/lib/words/say'

// What this file holds is held by the compiler: a line marked so fails `npm test -- types` once it does compile.
const first = {
  title: 'Trials',
  from: '{name} from {place}',
  loaves: { one: 'one loaf for {name}', other: '{count} loaves for {name}' },
  kinds: { salt: 'salt', other: 'other' },
} as const
type First = typeof first
const inLanguage = <const T extends object>(texts: T & SamePlaces<First, NoInfer<T>>) =>
  texts as unknown as WordsOf<First>

const whole = {
  title: 'T',
  from: 'aus {place}: {name}',
  loaves: { few: '{name}: {count} b', other: '{name}: {count} B' },
  kinds: { salt: 's', other: 'a' },
} as const

test('a language puts the places in its own order and has its own forms', () => {
  const words = inLanguage(whole)
  expect(say(first.from, 'en', { name: 'Ayo', place: 'Ulm' })).toBe('Ayo from Ulm')
  expect(say(words.from, 'de', { name: 'Ayo', place: 'Ulm' })).toBe('aus Ulm: Ayo')
  expect(say(words.loaves, 'pl', { count: 2, name: 'Ayo' })).toBe('Ayo: 2 b')
})

test('the facts of a text are its places, whatever the language', () => {
  const words = inLanguage(whole)
  // @ts-expect-error a place has no fact
  expect(() => say(words.from, 'de', { name: 'Ayo' })).toThrow('{place}')
  // @ts-expect-error the number that chooses a form is one
  expect(() => say(words.loaves, 'pl', { count: 'two', name: 'Ayo' })).toThrow('count')
  // @ts-expect-error there is no such place
  say(words.title, 'de', { name: 'Ayo' })
})

test('what was said is no part of another sentence; a name is', () => {
  const words = inLanguage(whole)
  const sentence = say(words.from, 'de', { name: 'Ayo', place: 'Ulm' })
  // @ts-expect-error a sentence as a fact
  say(words.from, 'de', { name: sentence, place: 'Ulm' })
  expect(say(words.from, 'de', { name: sayName('Teig {letter}', 'de', { letter: 'A' }), place: 'Ulm' })).toBe(
    'aus Ulm: Teig A',
  )
})

test('a missing key, a missing or invented place and an invented form do not compile, at the text', () => {
  // @ts-expect-error a key is missing
  inLanguage({ title: 'T', from: whole.from, loaves: whole.loaves })
  // @ts-expect-error a key of a branch is missing
  inLanguage({ ...whole, kinds: { salt: 's' } })
  inLanguage({
    title: 'T',
    // @ts-expect-error the place {place} is missing
    from: '{name}',
    loaves: whole.loaves,
    kinds: whole.kinds,
  })
  inLanguage({
    title: 'T',
    // @ts-expect-error there is no place {town} here
    from: '{name} {place} {town}',
    loaves: whole.loaves,
    kinds: whole.kinds,
  })
  inLanguage({
    title: 'T',
    from: whole.from,
    loaves: {
      // @ts-expect-error there is no place {town} here
      one: '{town} {name}',
      other: '{count} {name}',
    },
    kinds: whole.kinds,
  })
  inLanguage({
    title: 'T',
    from: whole.from,
    loaves: {
      one: '{name}',
      // @ts-expect-error the place {count} is missing
      other: '{name}',
    },
    kinds: whole.kinds,
  })
  inLanguage({
    // @ts-expect-error nothing is counted here
    title: { one: 'T', other: 'T' },
    from: whole.from,
    loaves: whole.loaves,
    kinds: whole.kinds,
  })
  inLanguage({
    title: 'T',
    from: whole.from,
    loaves: whole.loaves,
    // @ts-expect-error the first language has no such key
    kinds: { salt: 's', other: 'o', rye: 'r' },
  })
  expect.assertions(0)
})
