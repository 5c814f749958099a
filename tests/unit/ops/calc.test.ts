import { spawn } from 'node:child_process'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { catalogue } from '@/lib/calc/catalogue'
import type { CalcEntry } from '@/lib/calc/entry'

const script = path.resolve(import.meta.dirname, '..', '..', '..', 'lib', 'ops', 'run-script.mjs')

type Ran = { status: number | null; said: string; complained: string }

/** Runs what `npm run calc` runs, with a text on its standard input. */
function calc(args: readonly string[], given: string): Promise<Ran> {
  const child = spawn(process.execPath, [script, 'calc', 'calc', ...args], { stdio: ['pipe', 'pipe', 'pipe'] })
  let [said, complained] = ['', '']
  child.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()))
  child.stderr.on('data', (chunk: Buffer) => (complained += chunk.toString()))
  // A call that is refused at once does not wait for what is written to it.
  child.stdin.on('error', () => undefined).end(given)
  return new Promise((resolve) => child.on('close', (status) => resolve({ status, said, complained })))
}

const weighing = ['weighing/least-net-mass']
const example = { errorShare: 0.01, coverageFactor: 2, resolutionG: 0.1, repeatabilityG: 0 }

test('lists every calculation, a line each: its id and its title', async () => {
  const { status, said, complained } = await calc(['list'], '')
  expect({ status, complained }).toEqual({ status: 0, complained: '' })
  const lines = said.trimEnd().split('\n')
  expect(lines.map((line) => line.split(/ {2,}/)[0])).toEqual(catalogue.map(({ id }) => id))
  expect(lines).toContainEqual(
    expect.stringMatching(/^weighing\/least-net-mass +Least mass a scale weighs well enough$/),
  )
})

test.each([
  ['REML', ['mixed-model/fit-mixed-model', 'mixed-model/compare-mixed-model-arms'], 'formula/hydration'],
  [
    'tukey',
    ['comparison/tukey-kramer', 'distributions/studentized-range-tail', 'distributions/studentized-range-quantile'],
    'comparison/t-test',
  ],
  [
    'Dunnett',
    [
      'analysis/analyse-batches',
      'analysis/adjust-against-control',
      'mixed-model/compare-mixed-model-arms',
      'distributions/dunnett-quantile',
      'plan/dunnett-size',
      'panel/liking',
    ],
    'comparison/t-test',
  ],
  ['kenward roger', ['mixed-model/fit-mixed-model', 'mixed-model/compare-mixed-model-arms'], 'comparison/ancova'],
])('a list is narrowed by words of fields and choices too: %s', async (find, wanted, unwanted) => {
  const { status, said } = await calc(['list', ...find.split(' ')], '')
  const ids = said
    .trimEnd()
    .split('\n')
    .map((line) => line.split(/ {2,}/)[0])
  expect(status).toBe(0)
  for (const id of wanted) expect(ids).toContain(id)
  expect(ids).not.toContain(unwanted)
})

test('a search that finds nothing says so, with status 2', async () => {
  const { status, said, complained } = await calc(['list', 'zeppelin'], '')
  expect({ status, said }).toEqual({ status: 2, said: '' })
  expect(complained).toMatch(/‘zeppelin’/)
})

test('--help tells each field, its unit, choices and range, and the example', async () => {
  const { status, said, complained } = await calc([...weighing, '--help'], '')
  expect({ status, complained }).toEqual({ status: 0, complained: '' })
  expect(said).toMatch(/^ +errorShare +number, of 1 +above 0 below 1 /m)
  expect(said).toMatch(/^ +repeatabilityG +number, g +from 0 /m)
  expect(said).toMatch(/^ +leastNetMassG +number, g /m)
  expect(JSON.parse(said.trimEnd().split('\n').at(-1) ?? '')).toEqual(
    (catalogue as readonly CalcEntry[]).find(({ id }) => id === weighing[0])?.example,
  )
  expect((await calc(['mixed-model/fit-mixed-model', '--help'], '')).said).toMatch(
    /^ +blocks +one of none, fixed, random /m,
  )
})

test('--example is a question that can be put back as it is', async () => {
  const asked = await calc(['mixed-model/fit-mixed-model', '--example'], '')
  expect(asked.status).toBe(0)
  const { status, said } = await calc(['mixed-model/fit-mixed-model'], asked.said)
  expect(status).toBe(0)
  expect(JSON.parse(said)).toHaveProperty('coefficients')
})

test('with --lines each line gets a line, and a bad one costs no other', async () => {
  const lines = [
    JSON.stringify(example),
    '',
    'rubbish',
    JSON.stringify({ ...example, errorShare: 7 }),
    '[]',
    JSON.stringify({ ...example, resolutionG: 0.2 }),
  ]
  const { status, said, complained } = await calc([...weighing, '--lines'], lines.join('\r\n'))
  expect({ status, complained }).toEqual({ status: 2, complained: '' })
  const answers = said
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as unknown)
  const faultAt = (line: number, field: string) => ({
    line,
    faults: [{ field, words: expect.stringMatching(/./) as unknown }],
  })
  expect(answers).toEqual([
    { line: 1, answer: { leastNetMassG: expect.closeTo(200 * Math.sqrt(0.02 / 12), 10) as unknown } },
    faultAt(3, 'question'),
    faultAt(4, 'errorShare'),
    faultAt(5, 'question'),
    { line: 6, answer: { leastNetMassG: expect.closeTo(400 * Math.sqrt(0.02 / 12), 10) as unknown } },
  ])
})

test('lines that are all answered end with status 0, and no line at all is no fault', async () => {
  expect((await calc([...weighing, '--lines'], `${JSON.stringify(example)}\n`)).status).toBe(0)
  expect(await calc([...weighing, '--lines'], '')).toEqual({ status: 0, said: '', complained: '' })
})

test('answers JSON with JSON, and prints nothing beside it', async () => {
  const { status, said, complained } = await calc(weighing, JSON.stringify(example))
  expect({ status, complained }).toEqual({ status: 0, complained: '' })
  // Source: JCGM 100:2008 (GUM), 6.2.1: k · √(2 · d²/12) / e, worked by hand.
  expect((JSON.parse(said) as { leastNetMassG: number }).leastNetMassG).toBeCloseTo(
    (2 * Math.sqrt((2 * 0.01) / 12)) / 0.01,
    10,
  )
})

describe('a question that cannot be answered ends with status 2, and with field and reason on standard error alone', () => {
  test.each([
    ['no id', [], '', /npm run -s calc -- list/],
    ['an unknown id', ['weighing/a-ton-of-air'], '{}', /no calculation ‘weighing\/a-ton-of-air’/],
    ['two ids', [...weighing, ...weighing], '{}', /no option ‘weighing\/least-net-mass’/],
    ['two options', [...weighing, '--lines', '--help'], '{}', /npm run -s calc -- <id>/],
    ['an id that every object has', ['constructor'], '{}', /no calculation/],
    ['nothing on standard input', weighing, '', /not JSON: it is empty/],
    ['an unknown option', [...weighing, '--fast'], '', /no option ‘--fast’/],
    [
      'a choice that is none',
      ['comparison/t-test'],
      '{"kind":"z","control":[1,2],"treated":[2,3],"confidence":0.9}',
      /kind: .* one of: student, welch, paired/,
    ],
    ['no JSON', weighing, '{ errorShare: 1 }', /not JSON/],
    ['no object', weighing, '[1, 2]', /question: /],
    [
      'a field too few and one too many',
      weighing,
      JSON.stringify({ ...example, errorShare: undefined, tare: 1 }),
      /errorShare: This is needed\.\n.*tare: This field is not known/s,
    ],
    [
      'a text for a number',
      weighing,
      JSON.stringify({ ...example, resolutionG: '0.1' }),
      /resolutionG: Write a number/,
    ],
    [
      'a number too large for any',
      weighing,
      JSON.stringify(example).replace('0.1', '1e999'),
      /resolutionG: Write a number/,
    ],
    [
      'a value on an open end of its range',
      weighing,
      JSON.stringify({ ...example, errorShare: 1 }),
      /errorShare: Must be less than 1\./,
    ],
    [
      'a value outside its range',
      weighing,
      JSON.stringify({ ...example, repeatabilityG: -0.5 }),
      /repeatabilityG: Must not be below 0\./,
    ],
  ])('%s', async (_, args, given, expected) => {
    const { status, said, complained } = await calc(args, given)
    expect(complained).toMatch(expected)
    expect({ status, said }).toEqual({ status: 2, said: '' })
  })
})
