import 'server-only'
import { readAmendment } from '../../documents/amendment/read-amendment'
import type { AmendmentsOfFormat1 } from '../../documents/evidence-amendments/amendments-of-format-1'
import type { FileOfFormat1 } from '../../documents/evidence-file/file-of-format-1'
import { type NotedOfAmendments, notedOfAmendments } from '../amendments/noted-of-amendments'
import { allNoted, isRecordLeftOut } from './check-record'
import type { Finding } from './finding'
import { firstUnlike } from './first-unlike'

type Kept = Pick<AmendmentsOfFormat1, 'amendments' | 'amended' | 'slip'>
type Entry = FileOfFormat1['record'][number]

/**
 * What the record notes of amendments, against the file's own part of them: none was put in, taken away or changed, nor
 * what was said of it, nor who signed for them. Evidence that was kept with a decision has those from before that one.
 * @param kept null where the file has no such part
 * @param of the trial, and the hash of the evidence
 */
export function amendmentsByRecord(
  record: readonly Entry[],
  kept: Kept | null,
  of: { trial: string; evidence: string },
): Finding {
  const said = (outcome: Finding['outcome'], facts: Finding['facts'] = {}): Finding => ({
    what: 'amendments-noted',
    outcome,
    facts,
  })
  if (record.length === 0) return said('not-there')
  if (isRecordLeftOut(record)) return said('left-out')
  const decided = allNoted(record, 'evidence').find(({ hash }) => hash === of.evidence)
  const notes = record
    .filter(({ number }) => decided === undefined || number < decided.number)
    .flatMap(({ number, text, hash }) =>
      text === null ? [] : notedOfAmendments(text, hash, of.trial).map((note) => ({ number, note })),
    )
  const noted = notedById(notes)
  const there = keptById(kept)
  if (noted.size + there.size === 0) return said('not-there')
  for (const id of new Set([...there.keys(), ...noted.keys()])) {
    const [inFile, inRecord] = [there.get(id), noted.get(id)]
    if (firstUnlike(inFile?.said, inRecord?.said) === null) continue
    const code = inFile?.dough ?? inRecord?.dough ?? null
    return said('differs', code === null ? { number: inRecord?.number ?? 0 } : { code })
  }
  const unlike = firstUnlike({ slip: signedIn(kept) }, { slip: signedBy(notes, kept?.amended ?? null) })
  return unlike ? said('differs', unlike) : said('agrees')
}

type Verdict = { isAccepted: boolean; as: string; note: string; by: string | null; at: string }
/** An amendment with what was said of it, as far as file and record both have it. */
type Known = { said: { hash: string; verdict: Verdict | null }; dough: string | null; number?: number }

function notedById(notes: readonly { number: number; note: NotedOfAmendments }[]): Map<string, Known> {
  const found = new Map<string, Known>()
  for (const { number, note } of notes) {
    if (note.kind === 'slip') continue
    const { hash, dough } = note
    if (note.kind === 'proposed') {
      found.set(note.amendment, { said: { hash, verdict: null }, dough, number })
      continue
    }
    const { isAccepted, as, by, at, reason } = note
    found.set(note.amendment, { said: { hash, verdict: { isAccepted, as, note: reason, by, at } }, dough, number })
  }
  return found
}

function keptById(kept: Kept | null): Map<string, Known> {
  return new Map(
    (kept?.amendments ?? []).map(({ text, hash, verdict }) => {
      const read = readAmendment(text, hash)
      const amendment = read.outcome === 'read' ? read.amendment : null
      const said = { hash, verdict: verdict && { ...verdict, by: verdict.by.id } }
      return [amendment?.id ?? hash, { said, dough: amendment?.change.dough.code ?? null }]
    }),
  )
}

function signedIn(kept: Kept | null): unknown {
  return inOrder((kept?.slip ?? []).map(({ as, isLast, reason, by, at }) => ({ as, isLast, reason, by: by.id, at })))
}

/** Who signed over just these amendments, as the record notes it. */
function signedBy(notes: readonly { note: NotedOfAmendments }[], amended: string | null): unknown {
  return inOrder(
    notes.flatMap(({ note }) => {
      if (note.kind !== 'slip' || note.amended !== amended) return []
      const { as, isLast, reason, by, at } = note
      return [{ as, isLast, reason, by, at }]
    }),
  )
}

function inOrder<Signed extends { at: string; as: string }>(signatures: readonly Signed[]): Signed[] {
  return [...signatures].sort((a, b) => (a.at + a.as < b.at + b.as ? -1 : 1))
}
