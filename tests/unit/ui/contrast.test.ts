import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'

/*
 * Source: WCAG 2.2, 'relative luminance', 'contrast ratio', and success criteria 1.4.3 (text, 4.5 : 1) and
 * 1.4.11 (controls, focus and graphical objects, 3 : 1). Large text (3 : 1) is not used as an excuse here.
 */
type Hex = `#${string}`
type Theme = 'light' | 'dark'

const css = readFileSync(path.join(import.meta.dirname, '../../../app/globals.css'), 'utf8')
const tokens = new Map<string, Record<Theme, Hex>>()
for (const [, name, light, dark] of css.matchAll(/--color-([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\);/g)) {
  if (name && light && dark) tokens.set(name, { light: light as Hex, dark: dark as Hex })
}

function colour(name: string, theme: Theme): Hex {
  const token = tokens.get(name)
  if (!token) throw new Error(`no colour token ${name}`)
  return token[theme]
}

function luminance(hex: Hex): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = parseInt(hex.slice(at, at + 2), 16) / 255
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(one: Hex, other: Hex): number {
  const [low = 0, high = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b)
  return (high + 0.05) / (low + 0.05)
}

const grounds = ['paper', 'sheet', 'band']
const texts = ['ink', 'ink-2', 'ok', 'warn', 'stop']
const marks = ['line', 'focus', 'ember', 'arm-control', 'arm-a', 'arm-b', 'arm-c', 'arm-d', 'arm-e', 'arm-f']
/** Parts things and carries no meaning, so no ratio is asked of it. */
const decoration = ['rule']

describe('the measure itself', () => {
  it('gives 21 for black on white and 1 for a colour on itself, the ends of the scale in WCAG 2.2', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
    expect(contrast('#b93a16', '#b93a16')).toBe(1)
  })

  it('gives 4.48 for #777777 on white and 4.54 for #767676, the known edge of 4.5 (values from memory)', () => {
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2)
  })
})

it('every colour token has both themes and is checked here', () => {
  const declared = [...css.matchAll(/--color-([\w-]+): light-dark/g)].map(([, name]) => name)
  const checked = [...grounds, ...texts, ...marks, ...decoration, 'on-ember']
  expect([...tokens.keys()].sort()).toEqual(declared.sort())
  expect([...tokens.keys()].sort()).toEqual(checked.sort())
})

describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
  const textPairs = [...texts.flatMap((text) => grounds.map((ground) => [text, ground])), ['on-ember', 'ember']]
  it.each(textPairs)('text %s can be read on %s', (text = '', ground = '') => {
    expect(contrast(colour(text, theme), colour(ground, theme))).toBeGreaterThanOrEqual(4.5)
  })

  it.each(marks.flatMap((mark) => grounds.map((ground) => [mark, ground])))(
    '%s stands out on %s',
    (mark = '', ground = '') => {
      expect(contrast(colour(mark, theme), colour(ground, theme))).toBeGreaterThanOrEqual(3)
    },
  )
})
