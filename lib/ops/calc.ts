import { text } from 'node:stream/consumers'
import { catalogue, findEntry } from '../calc/catalogue'
import { workOut } from '../kitchen/calculators/work-out'
import { wordsOfFault } from '../kitchen/calculators/words-of-fault'
import { calculationWords } from '../kitchen/calculators/calculation-words'

/** What was given at the command line is at fault: the script ends with status 2. */
class BadCall extends Error {
  readonly exitStatus = 2
}

const how = `npm run calc -- list                            what there is
npm run calc -- <id> < question.json            the answer as JSON; the reference under Calculators has an example of each`

/**
 * `npm run calc -- list`: id and title of every calculation, a line each. `npm run calc -- <id>`: its question as JSON
 * on standard input, its answer as JSON on standard output and nothing beside it.
 * @throws Error with exitStatus 2 for an unknown id, text that is no JSON, and a question that is refused
 */
export async function calc(id?: string, ...others: string[]): Promise<void> {
  if (id === undefined || others.length > 0) throw new BadCall(how)
  if (id === 'list') return void process.stdout.write(list())
  const entry = findEntry(id)
  if (!entry) throw new BadCall(`There is no calculation ‘${id}’.\n${how}`)
  if (process.stdin.isTTY) throw new BadCall(`The question comes as JSON on standard input, for example:\necho '${JSON.stringify(entry.example)}' | npm run calc -- ${id}`)
  const worked = workOut(entry, readJson(await text(process.stdin)))
  if (!worked.ok) {
    const lines = worked.faults.map((fault) => `${fault.path || 'question'}: ${wordsOfFault(fault, { language: 'en', locale: 'en-GB' })}${fault.reason ? ` (${fault.reason})` : ''}`)
    throw new BadCall(lines.join('\n'))
  }
  process.stdout.write(`${JSON.stringify(worked.answer, onlyFinite, 2)}\n`)
}

function list(): string {
  const widest = Math.max(...catalogue.map(({ id }) => id.length))
  return catalogue.map(({ id }) => `${id.padEnd(widest)}  ${calculationWords(id, 'en').title}\n`).join('')
}

function readJson(given: string): unknown {
  try {
    return JSON.parse(given)
  } catch (error) {
    throw new BadCall(`Standard input is not JSON: ${given.trim() === '' ? 'it is empty.' : (error as Error).message}`)
  }
}

/** JSON has no word for what is not finite and writes null; an answer with such a number is a bug. */
function onlyFinite(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} is not a finite number`)
  return value
}
