import { expect, test } from 'vitest'
import { wordsIn } from '@/lib/words/words'

/** Every text of a tree of words, with where it stands. */
function* textsOf(tree: unknown, path = ''): Generator<[string, string]> {
  if (typeof tree === 'string') yield [path, tree]
  else if (typeof tree === 'object' && tree !== null) for (const [key, one] of Object.entries(tree)) yield* textsOf(one, `${path}.${key}`)
}

test('nobody is told of arms: a baker has doughs', () => {
  const texts = [...textsOf(wordsIn('en'))]
  expect(texts.length).toBeGreaterThan(2000)
  // A place to fill has the field's own name and is never read.
  expect(texts.filter(([, text]) => /\barms?\b/i.test(text.replace(/\{\w+\}/g, '')))).toEqual([])
})
