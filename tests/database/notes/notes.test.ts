import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { readNote } from '@/lib/documents/note/read-note'
import { textOfNote } from '@/lib/documents/note/text-of-note.input'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { keepNote } from '@/lib/kitchen/notes/keep-note'
import { listHandOver } from '@/lib/kitchen/notes/list-hand-over'
import { listNotes } from '@/lib/kitchen/notes/list-notes'
import { noteRead } from '@/lib/kitchen/notes/note-read'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
let batchId: string

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
  trial = await makeApprovedTrial(bakery)
  batchId = trial.batches[0]!.batchId
})
afterAll(() => database.drop())

const keep = (text: unknown, more: object = {}, who = bakery.early) =>
  keepNote.call(who.caller, { batchId, text, forNext: false, ...more })
const notesOf = async (of: string | null = batchId) =>
  valueOf(await listNotes.call(bakery.late.caller, { batchId: of })).rows
const handedOver = async (caller = bakery.late.caller) => valueOf(await listHandOver.call(caller, {})).notes
const entry = (more: object = {}) => ({
  kind: 'note',
  id: uuid(),
  batchId,
  text: 'The prover drips on the left.',
  forNext: false,
  takenAt: testNow.toISOString(),
  ...more,
})
const send = async (entries: object[], who = bakery.early) =>
  valueOf(await takeEntries.call(who.caller, { entries })).entries

describe('a note', () => {
  it('is kept of a dough, without the blanks at its ends and in one form, and everybody reads it', async () => {
    valueOf(await keep('  Sticky at the bench.\nMore dusting flour than usual; cre\u0300me.  '))
    expect(await notesOf()).toMatchObject([
      {
        text: 'Sticky at the bench.\nMore dusting flour than usual; cr\u00e8me.',
        who: 'Esi',
        isOwn: false,
        forNext: false,
        batch: { id: batchId, code: trial.batches[0]!.code },
        trialNumber: 1,
        readBy: [],
      },
    ])
  })

  it('is kept of the shift, of no dough at all', async () => {
    const { noteId } = valueOf(await keep('Flour comes at six.', { batchId: null }))
    expect((await notesOf(null)).find(({ id }) => id === noteId)).toMatchObject({ batch: null, trialNumber: null })
    expect((await notesOf()).map(({ id }) => id)).not.toContain(noteId)
  })

  it('stands in the record without its words', async () => {
    valueOf(await keep('Nobody but the reader of notes sees this.'))
    const last = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId },
      orderBy: { number: 'desc' },
    })
    expect(JSON.parse(last.entryText)).toMatchObject({
      action: 'notes.keep-note',
      target: batchId,
      after: { batch: trial.batches[0]!.code, forNext: false },
    })
    expect(last.entryText).not.toContain('Nobody but')
  })

  it.each([
    ['nothing', '', 'missing'],
    ['blanks alone', ' \n\t ', 'missing'],
    ['what nobody can see', '\u200b\u2060', 'unreadable'],
    ['what turns the text around', 'Good\u202edaB', 'unreadable'],
    ['what the database cannot hold', 'a\u0000b', 'unreadable'],
    ['half a character', 'a\ud800', 'unreadable'],
    ['more than anybody reads', 'x'.repeat(2001), 'too-long'],
    ['no text at all', 7, 'wrong-form'],
  ])('of %s is refused', async (_, text, code) => {
    expect(refusalOf(await keep(text))).toBe(`invalid text:${code}`)
  })

  it('of a dough of a neighbour, or of one that is not there, is refused the same', async () => {
    for (const of of [batchId, uuid()])
      expect(refusalOf(await keep('x', { batchId: of }, neighbour.owner))).toBe('not-found')
    expect(valueOf(await listNotes.call(neighbour.owner.caller, { batchId })).count).toBe(0)
  })

  it('stays as it was kept, whoever asks', async () => {
    const { noteId } = valueOf(await keep('As it was.'))
    for (const statement of [`UPDATE note SET text = 'x' WHERE id = $1`, `DELETE FROM note WHERE id = $1`])
      await expect(connected(database.ownerUrl, (client) => client.query(statement, [noteId]))).rejects.toMatchObject({
        code: 'EV001',
      })
  })
})

describe('a note from outside', () => {
  it('is kept once however often it is sent, and answered by the hash of its one text', async () => {
    const one = entry({ batchId: null, text: 'Scale two shows one gram with nothing on it.' })
    const text = textOfNote({ batch: null, forNext: false, takenAt: one.takenAt, text: one.text, trial: null })
    const hash = hashOfText(text)
    expect(readNote(text, hash)).toMatchObject({ outcome: 'read', format: 1 })
    expect(await send([one, one])).toEqual([
      { outcome: 'kept', id: one.id, hash, isAgain: false, about: {} },
      { outcome: 'kept', id: one.id, hash, isAgain: true, about: {} },
    ])
    expect(await send([one])).toMatchObject([{ outcome: 'kept', isAgain: true, hash }])
    expect(await db().note.count({ where: { bakeryId: bakery.bakeryId, id: one.id } })).toBe(1)
  })

  it('that is sent five times at one moment is kept once, and each is told that it is in the book', async () => {
    const one = entry({ batchId: null, text: 'Sent by a network that stutters.' })
    const answers = (await Promise.all([1, 2, 3, 4, 5].map(() => send([one])))).flat()
    expect(answers.map(({ outcome }) => outcome)).toEqual(Array(5).fill('kept'))
    expect(answers.filter((answer) => answer.outcome === 'kept' && !answer.isAgain)).toHaveLength(1)
  })

  it('under the number of another one overwrites nothing, and holds up nobody else', async () => {
    const one = entry()
    await send([one])
    expect(await send([{ ...one, text: 'Another one.' }, entry({ text: 'And one more.' })])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'note-clash' } },
      { outcome: 'kept' },
    ])
    expect(await db().note.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, id: one.id } })).toMatchObject({
      text: one.text,
    })
  })

  it('is of a trial, of a dough, or of nothing, and not of both', async () => {
    const ofTrial = entry({ batchId: undefined, trialId: trial.trialId })
    expect(
      await send([
        ofTrial,
        entry({ trialId: trial.trialId }),
        entry({ batchId: undefined, trialId: uuid() }),
        entry({ batchId: uuid() }),
      ]),
    ).toMatchObject([
      { outcome: 'kept' },
      { outcome: 'refused', refusal: { problems: [{ path: 'trialId', code: 'dough-or-trial' }] } },
      { outcome: 'refused', refusal: { code: 'not-found' } },
      { outcome: 'refused', refusal: { code: 'not-found' } },
    ])
    expect((await notesOf(null)).find(({ id }) => id === ofTrial.id)).toMatchObject({ batch: null, trialNumber: 1 })
  })

  it('is kept of a trial that has ended, because it moves nothing', async () => {
    const over = await makeApprovedTrial(bakery)
    await db().trial.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: over.trialId } },
      data: { state: 'stopped' },
    })
    expect(await send([entry({ batchId: over.batches[0]!.batchId })])).toMatchObject([{ outcome: 'kept' }])
  })

  it('has the hash that a device makes of what it trimmed and composed, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200 }), fc.boolean(), (typed, forNext) => {
        const text = typed.trim().normalize('NFC')
        const written = textOfNote({ batch: null, forNext, takenAt: testNow.toISOString(), text, trial: null })
        expect(readNote(written, hashOfText(written))).toMatchObject({ outcome: 'read', value: { text } })
      }),
      { seed: 61 },
    )
  })
})

describe('what is left for the next shift', () => {
  const leave = async (text: string) => valueOf(await keep(text, { batchId: null, forNext: true })).noteId

  it('stands at the top until somebody else has read it, and stays among the notes with who did', async () => {
    const noteId = await leave('The levain is fed at nine.')
    expect(await handedOver()).toMatchObject([{ id: noteId, who: 'Esi', isOwn: false }])
    expect(await handedOver(bakery.early.caller)).toMatchObject([{ id: noteId, isOwn: true }])
    expect(refusalOf(await noteRead.call(bakery.early.caller, { noteId }))).toBe('own-note')
    expect(await handedOver()).toHaveLength(1)
    valueOf(await noteRead.call(bakery.late.caller, { noteId }))
    valueOf(await noteRead.call(bakery.late.caller, { noteId }))
    valueOf(await noteRead.call(bakery.head.caller, { noteId }))
    expect(await handedOver()).toEqual([])
    expect((await notesOf(null)).find(({ id }) => id === noteId)).toMatchObject({
      forNext: true,
      readBy: expect.arrayContaining(['Lars', 'Henk']),
    })
    const read = await db().auditEntry.count({
      where: { bakeryId: bakery.bakeryId, targetId: noteId, action: 'notes.note-read' },
    })
    expect(read).toBe(2)
  })

  it('is gone from there after a day, and reaches no neighbour', async () => {
    const noteId = await leave('Order rye.')
    expect(await handedOver(neighbour.owner.caller)).toEqual([])
    for (const id of [noteId, uuid()])
      expect(refusalOf(await noteRead.call(neighbour.owner.caller, { noteId: id }))).toBe('not-found')
    const at = (hours: number) => new Date(testNow.getTime() + hours * 3_600_000)
    await db().session.updateMany({
      where: { bakeryId: bakery.bakeryId },
      data: { lastSeenAt: at(24), endsAt: at(48) },
    })
    expect(await handedOver(callerOf(bakery.late.sessionSecret, new Date(at(24).getTime() - 1)))).toHaveLength(1)
    expect(await handedOver(callerOf(bakery.late.sessionSecret, at(24)))).toEqual([])
    await db().session.updateMany({ where: { bakeryId: bakery.bakeryId }, data: { lastSeenAt: testNow } })
  })
})

describe('the list of notes', () => {
  it('shows each once over its pages, the latest first, also while more are written', async () => {
    const add = (count: number) =>
      db().note.createMany({
        data: Array.from({ length: count }, () => ({
          bakeryId: bakery.bakeryId,
          id: uuid(),
          text: 'x',
          forNext: false,
          personId: bakery.early.personId,
          takenAt: testNow,
          receivedAt: testNow,
          contentHash: 'a'.repeat(64),
        })),
      })
    await add(50)
    const stored = await db().note.findMany({
      where: { bakeryId: bakery.bakeryId },
      orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }],
      select: { id: true },
    })
    const seen: string[] = []
    let after: string | null = null
    do {
      const page: { rows: { id: string }[]; after: string | null } = valueOf(
        await listNotes.call(bakery.late.caller, { batchId: null, ...(after === null ? {} : { after }) }),
      )
      seen.push(...page.rows.map(({ id }) => id))
      after = page.after
      await add(1)
    } while (after !== null)
    expect(seen).toEqual(stored.map(({ id }) => id))
  })
})
