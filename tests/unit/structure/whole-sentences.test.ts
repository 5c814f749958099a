import { expect, test } from 'vitest'
import { sourceFilesIn, textOf } from '../../support/source-files'
import { textFaults } from '../../support/text-faults'

/** What looks like a text made of texts and is none, or has to be one. */
const explained: Record<string, string> = {
  'app/layout.tsx: `%s · ${desk.product}`': 'the name of a page and that of the product, for the tab of a browser',
  'lib/ui/form-field.tsx: `${props.label} (${bounds})`': 'the name of a field, and figures in brackets',
  'lib/ui/words-of-no-answer.ts: `${text.brokenTyped} ${text.reference}: ${digest}`':
    'in English only, because the server may be what is away',
  "lib/kitchen/calculators/help-of-calculation.ts: [ `${entry.id}: ${words.title}`, say(commandLine.source, language, { source: entry.source }), '', commandLine.asks, ...inColumns(asks), '', commandLine.gives, ...inColumns(gives), '', commandLine.example, JSON.stringify(entry.example), '', ].join('\\n')":
    'lines of a terminal, one below the other',
  'lib/kitchen/calculators/help-of-calculation.ts: `${entry.id}: ${words.title}`':
    'an id and a title, as the heading of a page in a terminal',
}

const files = ['app', 'lib/ui', 'lib/kitchen', 'lib/words']
  .flatMap(sourceFilesIn)
  .filter((file) => !/^lib\/words\/(en\/|format\/|pseudo)/.test(file))
const found = textFaults(files.map((file) => ({ file, text: textOf(file) })))

test('no text is put together of texts', () => {
  expect(files.length).toBeGreaterThan(300)
  expect(found.filter(({ file, code }) => explained[`${file}: ${code}`] === undefined)).toEqual([])
})

test('what is explained is still there', () => {
  const there = new Set(found.map(({ file, code }) => `${file}: ${code}`))
  expect(Object.keys(explained).filter((place) => !there.has(place))).toEqual([])
})

const whatIs = (text: string) => textFaults([{ file: 'a.ts', text }]).map(({ what }) => what)

test.each([
  ['say(a, l, { claim: say(b, l) })', 'a sentence as a fact'],
  ['const claim = say(b, l)\nsay(a, l, { claim })', 'a sentence as a fact'],
  ['const claimOf = () => say(b, l)\nfill(a, l, { claim: claimOf() })', 'a sentence as a fact'],
  [
    "function claimOf() { if (x) return null\n return y ? say(b, l) : 'no' }\nsayName(a, l, { claim: claimOf() ?? '' })",
    'a sentence as a fact',
  ],
  ['const a = `${say(b, l)}, ${c}`', 'texts concatenated'],
  ['const { title } = wordsIn(l).desk\nconst a = `${words.title}: x`', 'texts concatenated'],
  ["const { desk } = wordsIn(l)\nconst a = desk.title + '.'", 'texts concatenated'],
  ["const a = say(b, l) + ' ' + c", 'texts concatenated'],
  ["const a = list.map((each) => say(b, l, { each })).join(', ')", 'texts joined'],
  ["const parts = [words.one, words.two]\nparts.join('; ')", 'texts joined'],
  ['words.kinds[kind].toLowerCase()', 'letters changed'],
  ['text.name.charAt(0)', 'letters changed'],
])('%s', (code, what) => {
  expect(whatIs(code)).toContain(what)
})

test.each([
  'say(a, l, { dough: sayName(b, l), kind: words.kinds[kind], at: formatDate(at) })',
  "const id = `${key}-error`\nconst all = names.join(', ')",
  'paragraph([say(a, l), say(b, l)], l)',
])('lets be: %s', (code) => {
  expect(whatIs(code)).toEqual([])
})
