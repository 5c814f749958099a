import fs from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'
import { testNow } from '../../support/bakery'
import { connected, freshDatabase } from '../../support/database'

const folder = path.resolve(import.meta.dirname, '..', '..', '..', 'prisma', 'migrations')
const own = '20261130010000_kinds_of_caller'

it('entries from before there were kinds are of the desk where they have a person, keep their text, and still never change', async () => {
  const database = await freshDatabase('nothing')
  await connected(database.ownerUrl, async (owner) => {
    const apply = (name: string) => owner.query(fs.readFileSync(path.join(folder, name, 'migration.sql'), 'utf8'))
    const names = fs
      .readdirSync(folder)
      .filter((name) => /^\d/.test(name))
      .sort()
    for (const name of names.filter((each) => each < own)) await apply(name)
    const bakeryId = '01a22670-a9c1-7116-b164-c0fb2379cbc7'
    await owner.query(
      `INSERT INTO bakery (bakery_id, name, time_zone, locale, currency, region, mass_units, temperature_units, works_alone, cost_change_limit_pct, revision, created_at)
       VALUES ($1, 'Osier Lane', 'UTC', 'en-GB', 'EUR', 'eu', 'metric', 'celsius', false, 1, 1, $2)`,
      [bakeryId, testNow],
    )
    for (const [number, personId] of [
      [1, '01a22670-aa21-7300-8705-8d13bfb3f6e3'],
      [2, null],
    ]) {
      await owner.query(
        `INSERT INTO audit_entry (bakery_id, number, at, person_id, action, entry_text, previous_hash, hash) VALUES ($1, $2, $3, $4, 'people.sign-in', 'kept as it was', repeat('0', 64), repeat('1', 64))`,
        [bakeryId, number, testNow, personId],
      )
    }
    await apply(own)
    const { rows } = await owner.query('SELECT number::int, by::text, entry_text FROM audit_entry ORDER BY number')
    expect(rows).toEqual([
      { number: 1, by: 'desk', entry_text: 'kept as it was' },
      { number: 2, by: null, entry_text: 'kept as it was' },
    ])
    await expect(owner.query(`UPDATE audit_entry SET by = 'job'`)).rejects.toMatchObject({ code: 'EV001' })
  })
  await database.drop()
})
