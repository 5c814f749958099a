import 'server-only'
import { readAuditEntry } from '../../documents/audit-entry/read-audit-entry'
import type { FileOfFormat1 } from '../../documents/evidence-file/file-of-format-1'
import { hashOfText } from '../../documents/hash-of-text'
import { notedHash, type NotedKind } from '../noted-hash'
import type { CheckOutcome, Finding, PaperAnchor } from './finding'

type Entry = FileOfFormat1['record'][number]

/**
 * Checks the entries of the record that a file has: each text by its hash, each by the one before it as far as that is
 * there, what they noted of the closing and of the evidence, and an anchor from paper.
 * @param hashes of what was kept; null where the file has none
 */
export function checkRecord(
  { record }: Pick<FileOfFormat1, 'record'>,
  hashes: Readonly<Record<NotedKind, string | null>>,
  paper: PaperAnchor | null,
): Finding[] {
  const hashOf = new Map(record.map(({ number, hash }) => [number, hash]))
  const isLeftOut = isRecordLeftOut(record)
  const broken = record.find(
    (entry) => (!isLeftOut && entry.text === null) || !follows(entry, hashOf.get(entry.number - 1)),
  )
  const chain: CheckOutcome = record.length === 0 ? 'not-there' : broken ? 'differs' : isLeftOut ? 'left-out' : 'agrees'
  return [
    { what: 'record', outcome: chain, facts: broken ? { number: broken.number } : {} },
    ...(['closing', 'evidence'] as const).map((kind): Finding => {
      const noted = allNoted(record, kind)
      // The first of them: evidence that was taken back and kept anew has its own.
      const found = noted.find(({ hash }) => hash === hashes[kind])
      if (hashes[kind] === null || noted.length === 0)
        return { what: kind, outcome: isLeftOut ? 'left-out' : 'not-there', facts: {} }
      return found
        ? { what: kind, outcome: 'agrees', facts: { number: found.number } }
        : { what: kind, outcome: 'differs', facts: { number: noted[0]?.number ?? 0 } }
    }),
    ...(paper ? [onPaper(paper, hashOf.get(paper.number))] : []),
  ]
}

/** Whoever may not read the record has none of its texts; a single one that is missing was taken out. */
export function isRecordLeftOut(record: readonly Entry[]): boolean {
  return record.length > 0 && record.every(({ text }) => text === null)
}

/** Where entries of the record note the hash of a frozen text. */
export function allNoted(record: readonly Entry[], kind: NotedKind): { number: number; hash: string }[] {
  return record.flatMap(({ number, text, hash }) => {
    const own = text === null ? null : notedHash(text, hash, kind)
    return own === null ? [] : [{ number, hash: own }]
  })
}

/** An entry whose text was left out has only its hash, which the one after it names. */
function follows({ number, hash, text }: Entry, before: string | undefined): boolean {
  if (text === null) return true
  if (hashOfText(text) !== hash) return false
  const read = readAuditEntry(text)
  if (read.outcome !== 'read') return read.outcome === 'unknown-format'
  return read.entry.number === String(number) && (before === undefined || read.entry.previous === before)
}

function onPaper({ number, hash }: PaperAnchor, own: string | undefined): Finding {
  const outcome = own === undefined ? 'not-there' : own.startsWith(hash.toLowerCase()) ? 'agrees' : 'differs'
  return { what: 'paper', outcome, facts: { number } }
}
