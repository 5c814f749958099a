import { describe, expect, it } from 'vitest'
import { readLanguage, wordsIn } from '@/lib/words/words'

type Tree = { [key: string]: string | Tree }

function texts(tree: Tree, path = ''): [string, string][] {
  return Object.entries(tree).flatMap(([key, value]) => (typeof value === 'string' ? [[`${path}${key}`, value] as [string, string]] : texts(value, `${path}${key}.`)))
}

describe('the words', () => {
  const english = texts(wordsIn('en'))

  it('are all there: none is empty, none has a stray brace or blank', () => {
    const odd = english.filter(([, text]) => text.trim() !== text || text === '' || /[{}]/.test(text.replace(/\{\w+\}/g, '')))
    expect(odd).toEqual([])
  })

  // A place in braces is filled with a name and never read itself.
  it('say dough: what a design calls an arm is no word of a baker', () => {
    expect(english.filter(([, text]) => /\barms?\b/i.test(text.replace(/\{\w+\}/g, '')))).toEqual([])
  })

  it('have the same places in the pseudo-language', () => {
    const pseudo = new Map(texts(wordsIn('en-XA')))
    const places = (text: string | undefined) => (text?.match(/\{\w+\}/g) ?? []).sort()
    for (const [key, text] of english) expect(places(pseudo.get(key)), key).toEqual(places(text))
  })

  it('change every text in the pseudo-language', () => {
    const pseudo = new Map(texts(wordsIn('en-XA')))
    expect(english.filter(([key, text]) => pseudo.get(key) === text)).toEqual([])
  })

  it('are chosen by what the browser asks for first', () => {
    expect(readLanguage('en-XA,en;q=0.9')).toBe('en-XA')
    expect(readLanguage('de-DE,de;q=0.9')).toBe('en')
    expect(readLanguage(null)).toBe('en')
  })
})
