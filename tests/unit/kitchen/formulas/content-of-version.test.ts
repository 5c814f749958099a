import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { readVersionContent } from '@/lib/documents/version-content/read-version-content'
import { textOfVersionContent } from '@/lib/documents/version-content/text-of-version-content'
import { allergensOfContent, contentOfVersion, type VersionRows } from '@/lib/kitchen/formulas/content-of-version'

const id = (digit: number) => `00000000-0000-7000-8000-00000000000${digit}`

const rows: VersionRows = {
  bakeryId: id(1),
  id: id(2),
  number: 1,
  fromVersionId: null,
  reason: 'What we bake today',
  pieces: 12,
  scalingMassG: 880,
  doughLossPct: 1.5,
  doughTempC: 26,
  mixTimeS: 540,
  bulkTimeS: 3600,
  proofTimeS: 3000,
  bakeTempC: 220,
  bakeTimeS: 2100,
  method: 'Mix, rest, mould.',
  formula: { id: id(3), name: 'Brücke' },
  draftedBy: { id: id(4), name: 'Henk' },
  decision: null,
  stages: [
    {
      kind: 'final_dough',
      name: '',
      lines: [
        {
          pctFlour: 100,
          ingredient: {
            id: id(5),
            name: 'Flour',
            kind: 'flour',
            allergens: ['gluten'],
            allergensCheckedAt: new Date(0),
          },
        },
        {
          pctFlour: 0.1,
          ingredient: { id: id(6), name: 'Paste', kind: 'other', allergens: ['mustard'], allergensCheckedAt: null },
        },
        {
          pctFlour: 3,
          ingredient: {
            id: id(7),
            name: 'Mix',
            kind: 'dairy',
            allergens: ['milk', 'egg'],
            allergensCheckedAt: new Date(0),
          },
        },
      ],
    },
  ],
}

/** Of the text of what the rows say. */
const textOf = (of: VersionRows) => textOfVersionContent(contentOfVersion(of)).text

describe('the content of a version', () => {
  const { text, hash } = textOfVersionContent(contentOfVersion(rows))

  it('has one text: keys in order, no blanks, numbers as RFC 8785 writes them, UTF-8', () => {
    expect(
      text.startsWith(
        '{"bakery":"00000000-0000-7000-8000-000000000001","batch":{"doughLossPct":1.5,"pieces":12,"scalingMassG":880},"format":1,',
      ),
    ).toBe(true)
    expect(text).toContain('"pctFlour":0.1}')
    expect(text).toContain('"name":"Brücke"')
    expect(hash).toBe(createHash('sha256').update(Buffer.from(text, 'utf8')).digest('hex'))
  })

  it('holds the evidence of a version that was drafted from a trial, and nothing of it otherwise', () => {
    const drafted: VersionRows = { ...rows, decision: { id: id(8), evidence: { hash: 'a'.repeat(64) } } }
    const ofTrial = textOf(drafted)
    expect(readVersionContent(ofTrial)).toMatchObject({
      outcome: 'read',
      content: { evidence: { decision: id(8), hash: 'a'.repeat(64) } },
    })
    expect(text).not.toContain('evidence')
    // Worked out with this very content before there was evidence: signed versions keep their seals.
    expect(hash).toBe('1bdef1522e16de6ce415b41b803ee59329d26e6455cb55123ba4057ba8d35718')
    expect(ofTrial).not.toBe(textOf({ ...drafted, decision: { id: id(8), evidence: { hash: 'b'.repeat(64) } } }))
  })

  it('comes back from its text as it was', () => {
    expect(readVersionContent(text)).toEqual({ outcome: 'read', format: 1, content: contentOfVersion(rows) })
  })

  it('has the same text whatever the order of an ingredient’s allergens, and another for anything that matters', () => {
    const withLine = (
      more: Partial<VersionRows['stages'][number]['lines'][number]['ingredient']>,
      pctFlour = 3,
    ): VersionRows => ({
      ...rows,
      stages: rows.stages.map((stage) => ({
        ...stage,
        lines: stage.lines.map((line) =>
          line.ingredient.id === id(7) ? { pctFlour, ingredient: { ...line.ingredient, ...more } } : line,
        ),
      })),
    })
    expect(textOf(withLine({ allergens: ['egg', 'milk'] }))).toBe(text)
    for (const other of [
      withLine({ allergens: ['milk'] }),
      withLine({ allergensCheckedAt: null }),
      withLine({ name: 'Other' }),
      withLine({}, 3.01),
      { ...rows, method: 'Mix.' },
    ]) {
      expect(textOf(other)).not.toBe(text)
    }
  })

  it('counts what is known of an ingredient that nobody has checked, and names it as unchecked', () => {
    expect(allergensOfContent(contentOfVersion(rows))).toEqual({
      known: ['gluten', 'egg', 'milk', 'mustard'],
      uncheckedIngredients: [{ id: id(6), name: 'Paste' }],
    })
  })
})
