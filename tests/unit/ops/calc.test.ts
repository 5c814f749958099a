import { spawn } from 'node:child_process'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { catalogue } from '@/lib/calc/catalogue'

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
  expect(lines).toContainEqual(expect.stringMatching(/^weighing\/least-net-mass +Least mass a scale weighs well enough$/))
})

test('answers JSON with JSON, and prints nothing beside it', async () => {
  const { status, said, complained } = await calc(weighing, JSON.stringify(example))
  expect({ status, complained }).toEqual({ status: 0, complained: '' })
  // Source: JCGM 100:2008 (GUM), 6.2.1: k · √(2 · d²/12) / e, worked by hand.
  expect((JSON.parse(said) as { leastNetMassG: number }).leastNetMassG).toBeCloseTo((2 * Math.sqrt((2 * 0.01) / 12)) / 0.01, 10)
})

describe('a question that cannot be answered ends with status 2, and with field and reason on standard error alone', () => {
  test.each([
    ['no id', [], '', /npm run calc -- list/],
    ['an unknown id', ['weighing/a-ton-of-air'], '{}', /no calculation ‘weighing\/a-ton-of-air’/],
    ['two ids', [...weighing, ...weighing], '{}', /npm run calc -- <id>/],
    ['an id that every object has', ['constructor'], '{}', /no calculation/],
    ['nothing on standard input', weighing, '', /not JSON: it is empty/],
    ['no JSON', weighing, '{ errorShare: 1 }', /not JSON/],
    ['no object', weighing, '[1, 2]', /question: /],
    ['a field too few and one too many', weighing, JSON.stringify({ ...example, errorShare: undefined, tare: 1 }), /errorShare: This is needed\.\n.*tare: This field is not known/s],
    ['a text for a number', weighing, JSON.stringify({ ...example, resolutionG: '0.1' }), /resolutionG: Write a number/],
    ['a number too large for any', weighing, JSON.stringify(example).replace('0.1', '1e999'), /resolutionG: Write a number/],
    ['a value on an open end of its range', weighing, JSON.stringify({ ...example, errorShare: 1 }), /errorShare: Must be less than 1\./],
    ['a value outside its range', weighing, JSON.stringify({ ...example, repeatabilityG: -0.5 }), /repeatabilityG: Must not be below 0\./],
  ])('%s', async (_, args, given, expected) => {
    const { status, said, complained } = await calc(args, given)
    expect(complained).toMatch(expected)
    expect({ status, said }).toEqual({ status: 2, said: '' })
  })
})
