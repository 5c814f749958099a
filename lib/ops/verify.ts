import fs from 'node:fs'
import { checkFile } from '../kitchen/evidence/check-file'
import { isSound, type PaperAnchor } from '../kitchen/evidence/finding'
import { wordsOfFinding } from '../kitchen/evidence/words-of-finding'
import { say } from '../words/say'
import { wordsIn } from '../words/words'

/** What was given is at fault: the script ends with status 2. */
class BadCall extends Error {
  readonly exitStatus = 2
}

const words = wordsIn('en').evidence.commandLine

/**
 * `npm run -s verify -- evidence.json [--anchor 412 3f2a…]`: checks a file of evidence by itself, without any book, and
 * prints a line a check, its outcome first. Status 1 where something does not agree.
 * @throws Error with exitStatus 2 for a call that means nothing and a file that cannot be read
 */
export function verify(file?: string, option?: string, number?: string, hash?: string, ...more: string[]): void {
  if (file === undefined || more.length > 0) throw new BadCall(words.use)
  const findings = checkFile(readOrRefuse(file), option === undefined ? null : anchorOf(option, number, hash))
  for (const finding of findings) {
    const { what, outcome, fact } = wordsOfFinding(finding, 'en')
    process.stdout.write(`${[outcome, what, fact].filter((said) => said !== null).join('\t')}\n`)
  }
  if (!findings.every(isSound)) process.exitCode = 1
}

function anchorOf(option: string, number: string | undefined, hash: string | undefined): PaperAnchor {
  if (option !== '--anchor' || !/^[1-9]\d{0,14}$/.test(number ?? '') || !/^[0-9a-f]{8,64}$/i.test(hash ?? ''))
    throw new BadCall(words.use)
  return { number: Number(number), hash: hash ?? '' }
}

function readOrRefuse(file: string): string {
  try {
    return fs.readFileSync(file, 'utf8')
  } catch (error) {
    throw new BadCall(say(words.unreadable, 'en', { why: error instanceof Error ? error.message : String(error) }))
  }
}
