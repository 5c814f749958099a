import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { appendAudit, chainStart } from '../../../lib/db/append-audit'
import { inTransaction } from '../../../lib/db/transaction'
import { verifyRecord } from '../../../lib/kitchen/audit/verify-record'
import { getDesk } from '../../../lib/kitchen/people/get-desk'
import { anchorText } from '../../../lib/words/format/anchor-text'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

const write = async ({ bakeryId }: TestBakery, ...actions: string[]) => {
  for (const action of actions)
    await inTransaction((tx) => appendAudit(tx, bakeryId, testNow, null, 'test', { action }))
}
const compared = async ({ owner }: TestBakery, anchor: { number: unknown; hash: string }) =>
  valueOf(await verifyRecord.call(owner.caller, { anchor }))

/** Writes a bakery's whole record anew, so that every entry follows from the one before it, as the database's owner can. */
async function writeAnew(bakery: TestBakery, ...actions: string[]) {
  await connected(database.ownerUrl, (owner) =>
    owner.query(
      `ALTER TABLE audit_entry DISABLE TRIGGER USER; DELETE FROM audit_entry WHERE bakery_id = '${bakery.bakeryId}';
       UPDATE audit_head SET number = 0, hash = '${chainStart}' WHERE bakery_id = '${bakery.bakeryId}';
       ALTER TABLE audit_entry ENABLE TRIGGER USER`,
    ),
  )
  await write(bakery, ...actions)
}

describe('what a print says of the record', () => {
  it('agrees with it for good, typed with its spaces or without, while the record goes on', async () => {
    const bakery = await makeBakery('Mill Row')
    await write(bakery, 'first', 'second', 'third')
    const { number, hash } = valueOf(await getDesk.call(bakery.early.caller, {})).record
    await write(bakery, 'fourth', 'fifth')
    for (const typed of [anchorText(hash), hash.slice(0, 12).toUpperCase(), hash])
      expect(await compared(bakery, { number: String(number), hash: typed })).toMatchObject({
        fault: null,
        anchor: 'agrees',
      })
  })

  it('shows that the record was written anew, where the chain itself cannot', async () => {
    const bakery = await makeBakery('Mill Row')
    await write(bakery, 'first', 'second', 'third')
    const { number, hash } = valueOf(await getDesk.call(bakery.early.caller, {})).record
    const print = { number: String(number), hash: anchorText(hash) }
    await writeAnew(bakery, 'first', 'another', 'third')
    expect(await compared(bakery, print)).toMatchObject({ fault: null, anchor: 'differs' })
    await writeAnew(bakery, 'first')
    expect(await compared(bakery, print)).toMatchObject({ fault: null, anchor: 'not-there' })
  })

  it('is refused where it is no foot of a print, and is nothing of a neighbour', async () => {
    const [bakery, neighbour] = [await makeBakery('Mill Row'), await makeBakery('Next Door')]
    await write(bakery, 'first')
    await write(neighbour, 'other')
    const { number, hash } = valueOf(await getDesk.call(bakery.early.caller, {})).record
    expect(await compared(neighbour, { number, hash })).toMatchObject({ anchor: 'differs' })
    for (const anchor of [
      { number: '', hash },
      { number: 'two', hash },
      { number: '0', hash },
      { number: '1.5', hash },
      { number, hash: '' },
      { number, hash: 'ab12' },
      { number, hash: `${hash}0` },
      { number, hash: 'g'.repeat(16) },
      { number: '1e21', hash },
    ])
      expect(refusalOf(await verifyRecord.call(bakery.owner.caller, { anchor }))).toMatch(/^invalid/)
    expect(refusalOf(await verifyRecord.call(bakery.early.caller, { anchor: { number, hash } }))).toBe('not-allowed')
  })
})
