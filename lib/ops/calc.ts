import { createInterface } from 'node:readline/promises'
import { text } from 'node:stream/consumers'
import { catalogue, findEntry } from '../calc/catalogue'
import type { CalcEntry } from '../calc/entry'
import { calculationWords } from '../kitchen/calculators/calculation-words'
import { helpOfCalculation } from '../kitchen/calculators/help-of-calculation'
import { isFound } from '../kitchen/calculators/is-found'
import { namesInFields } from '../kitchen/calculators/names-in-fields'
import { fieldsOfSchema } from '../kitchen/calculators/shape-of-schema'
import { textsOfCalculation } from '../kitchen/calculators/texts-of-calculation'
import type { Fault } from '../kitchen/calculators/fault-of-calc-error'
import { workOut } from '../kitchen/calculators/work-out'
import { wordsOfFault } from '../kitchen/calculators/words-of-fault'
import { paragraph } from '../words/paragraph'
import { say } from '../words/say'
import { wordsIn } from '../words/words'

/** What was given at the command line is at fault: the script ends with status 2. */
class BadCall extends Error {
  readonly exitStatus = 2
}

const words = wordsIn('en').calculators.commandLine

/**
 * `npm run calc -- list [words]`: id and title of the calculations that have to do with the words, a line each. With an
 * id: its question as JSON on standard input, its answer as JSON on standard output and nothing beside it; `--help` and
 * `--example` tell how to ask; with `--lines` each line of standard input is a question, and each gets a line
 * `{"line":1,"answer":…}` or `{"line":1,"faults":[{"field","words","reason"}]}` as soon as it is there.
 * @throws Error with exitStatus 2 for a call that means nothing, text that is no JSON, and a question that is refused,
 * in lines, after all are done, exit status 2, or 1 where one broke
 */
export async function calc(id?: string, ...others: string[]): Promise<void> {
  if (id === 'list') {
    print(list(others.join(' ').trim()))
    return
  }
  if (id === undefined || id === '--help') throw new BadCall(words.use)
  const entry = findEntry(id)
  if (!entry) throw new BadCall(`${say(words.unknownId, 'en', { id })}\n${words.use}`)
  const [option, ...more] = others
  if (more.length > 0) throw new BadCall(words.use)
  switch (option) {
    case '--help':
      print(helpOfCalculation(entry, 'en'))
      return
    case '--example':
      print(`${JSON.stringify(entry.example)}\n`)
      return
    case '--lines':
      return answerLines(entry)
    case undefined:
      return answerOne(entry)
    default:
      throw new BadCall(`${say(words.unknownOption, 'en', { option })}\n${words.use}`)
  }
}

function list(find: string): string {
  const found = (catalogue as readonly CalcEntry[]).filter(({ id, source, input, output }) => {
    const names = namesInFields([...fieldsOfSchema(input, 'input'), ...fieldsOfSchema(output, 'output')])
    return find === '' || isFound(textsOfCalculation({ id, source, ...names }, 'en'), find)
  })
  if (found.length === 0) throw new BadCall(say(words.foundNone, 'en', { find }))
  const widest = Math.max(...found.map(({ id }) => id.length))
  return found.map(({ id }) => `${id.padEnd(widest)}  ${calculationWords(id, 'en').title}\n`).join('')
}

async function answerOne(entry: CalcEntry): Promise<void> {
  if (process.stdin.isTTY)
    throw new BadCall(
      say(words.onInput, 'en', { call: `npm run -s calc -- ${entry.id} --example | npm run -s calc -- ${entry.id}` }),
    )
  const worked = workOut(entry, readJson(await text(process.stdin)))
  if (!worked.ok)
    throw new BadCall(
      worked.faults
        .map((fault) => `${fieldOf(fault)}: ${sentenceOf(fault)}${fault.reason ? ` (${fault.reason})` : ''}`)
        .join('\n'),
    )
  print(`${JSON.stringify(worked.answer, onlyFinite, 2)}\n`)
}

/** One bad line costs its own answer and no other; the status tells at the end. An empty line is passed over. */
async function answerLines(entry: CalcEntry): Promise<void> {
  let line = 0
  for await (const given of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
    line++
    if (given.trim() !== '') print(`${JSON.stringify({ line, ...answerLine(entry, given) }, onlyFinite)}\n`)
  }
}

type LineFault = { field: string; words: string; reason?: string }

function answerLine(entry: CalcEntry, given: string): { answer: unknown } | { faults: readonly LineFault[] } {
  // Something that broke outweighs a refusal, whichever comes first.
  const refuse = (faults: readonly LineFault[], status: 1 | 2) => {
    process.exitCode = process.exitCode === 1 ? 1 : status
    return { faults }
  }
  let question: unknown
  try {
    question = JSON.parse(given)
  } catch (error) {
    return refuse([{ field: words.question, words: say(words.lineNotJson, 'en', { why: messageOf(error) }) }], 2)
  }
  try {
    const worked = workOut(entry, question)
    if (worked.ok) return { answer: worked.answer }
    return refuse(
      worked.faults.map((fault) => ({
        field: fieldOf(fault),
        words: sentenceOf(fault),
        ...(fault.reason ? { reason: fault.reason } : {}),
      })),
      2,
    )
  } catch (error) {
    return refuse([{ field: words.question, words: say(words.broke, 'en', { why: messageOf(error) }) }], 1)
  }
}

const fieldOf = ({ path }: Fault) => path || words.question

/** What is wrong, with the values of a choice, which nobody sees at the command line. */
function sentenceOf(fault: Fault): string {
  const sentence = wordsOfFault(fault, { language: 'en', locale: 'en-GB' })
  const { choices } = fault.facts
  return choices === undefined ? sentence : paragraph([sentence, say(words.choices, 'en', { choices })], 'en')
}

function readJson(given: string): unknown {
  if (given.trim() === '') throw new BadCall(words.empty)
  try {
    return JSON.parse(given)
  } catch (error) {
    throw new BadCall(say(words.notJson, 'en', { why: messageOf(error) }))
  }
}

const messageOf = (error: unknown) => (error instanceof Error ? error.message : String(error))

const print = (given: string) => void process.stdout.write(given)

/** JSON has no word for what is not finite and writes null; an answer with such a number is a bug. */
function onlyFinite(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} is not a finite number`)
  return value
}
