import { execFile } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { expect, test, type App } from '../support/app'
import { testPin } from '../support/stations'
import { readyToRead } from '../support/tablet'

type Ran = { status: number; out: string; error: string }

/** Runs the example as somebody at a scale would, in a folder of its own. */
function run(folder: string, args: readonly string[], lines = '', pin = testPin): Promise<Ran> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [path.resolve('lib/ops/send-lines.mjs'), ...args],
      { cwd: folder, env: { ...process.env, EVENDOUGH_PIN: pin } },
      (_, out, error) => resolve({ status: child.exitCode ?? -1, out, error }),
    )
    child.stdin?.end(lines)
  })
}

async function readings(app: App, batchId: string) {
  const { rows } = await app.look.query<{ value: string }>(
    `SELECT value_entered AS value FROM reading WHERE batch_id = $1 ORDER BY received_at, id`,
    [batchId],
  )
  return rows.map(({ value }) => value)
}

test('lines of a scale reach the book once, and what is wrong with one is said and holds nothing else up', async ({
  app,
  bakery,
}, testInfo) => {
  const { code, dough, trial } = await readyToRead(bakery)
  const folder = testInfo.outputPath('scale')
  fs.mkdirSync(folder, { recursive: true })
  expect(await run(folder, ['enrol', app.url, 'XXXX-XXXX'])).toMatchObject({ status: 1 })
  expect(await run(folder, ['enrol', app.url, code])).toMatchObject({ status: 0, error: '' })
  const key = path.join(folder, 'station.json')
  expect(fs.statSync(key).mode & 0o777).toBe(0o600)
  expect(await run(folder, ['send', 'Nobody'])).toMatchObject({ status: 1, error: expect.stringContaining('Esi') })
  expect(await run(folder, ['send', 'Esi'], '', '111111')).toMatchObject({ status: 1 })

  const lines = [
    `${dough.code};Dough temperature;;26.4;°C`,
    `${dough.code};Dough temperature;;26.5;°C`,
    '000;Dough temperature;;26.4;°C',
    `${dough.code};Water added;;8120;g`,
    'mashed ;; keys',
    '',
    `${dough.code};Dough weight;1;482;g`,
  ]
  const sent = await run(folder, ['send', 'Esi'], lines.join('\n'))
  expect(sent.status).toBe(1)
  expect(sent.out).toBe('kept: 26.4 °C\nkept: 482 g\n')
  expect(sent.error.match(/^(not kept|refused): /gm)).toHaveLength(4)
  expect(await readings(app, dough.batchId)).toEqual(['26.4', '482'])
  const refused = fs.readFileSync(path.join(folder, 'station.refused'), 'utf8')
  expect(JSON.parse(refused)).toMatchObject({ value: '8120', measureId: trial.measures['water-added'] })

  // An answer that got lost: what lies there comes again, and the book has it once.
  const unsent = path.join(folder, 'station.unsent')
  expect(fs.readFileSync(unsent, 'utf8')).toBe('')
  const { rows } = await app.look.query<{ id: string; at: string }>(
    `SELECT id, to_char(taken_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS at FROM reading WHERE batch_id = $1 AND value_entered = '26.4'`,
    [dough.batchId],
  )
  const again = {
    kind: 'reading',
    id: rows[0]?.id,
    batchId: dough.batchId,
    measureId: trial.measures['dough-temp'],
    piece: null,
    factorLevel: null,
    repeat: 1,
    value: '26.4',
    unit: '°C',
    takenAt: rows[0]?.at,
  }
  fs.writeFileSync(unsent, `${JSON.stringify(again)}\n{"kind":"reading","id":"cut o`)
  expect(await run(folder, ['send', 'Esi'])).toEqual({ status: 0, out: 'kept: 26.4 °C\n', error: '' })
  expect(await readings(app, dough.batchId)).toEqual(['26.4', '482'])

  // The book away: nothing is taken, and what lies there stays.
  fs.writeFileSync(unsent, `${JSON.stringify(again)}\n`)
  fs.writeFileSync(key, JSON.stringify({ ...JSON.parse(fs.readFileSync(key, 'utf8')), url: 'http://127.0.0.1:9' }))
  const away = await run(folder, ['send', 'Esi'])
  expect(away).toMatchObject({ status: 1, error: expect.stringContaining('1 not sent') })
  expect(fs.readFileSync(unsent, 'utf8')).toContain('26.4')
})
