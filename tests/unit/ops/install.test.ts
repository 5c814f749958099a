import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'

let folder: string

/** A project of two files and an npm that writes down what it is asked for, `ci` taking away what was there as the real one does. */
beforeEach(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-install-'))
  for (const made of ['lib/ops', 'lib/db/generated', 'prisma', 'bin'])
    fs.mkdirSync(path.join(folder, made), { recursive: true })
  fs.copyFileSync('lib/ops/bootstrap.mjs', path.join(folder, 'lib/ops/bootstrap.mjs'))
  write('prisma/schema.prisma', '')
  write('package-lock.json', '{}')
  write(
    'bin/npm',
    `#!${process.execPath}
const fs = require('node:fs')
const [what] = process.argv.slice(2)
fs.appendFileSync('asked.txt', process.argv.slice(2).filter((each) => !each.startsWith('--no-audit') && !each.startsWith('--no-fund') && !each.startsWith('--loglevel')).join(' ') + '\\n')
if (what === 'ci') fs.rmSync('node_modules', { recursive: true, force: true })
fs.mkdirSync('node_modules/prisma/build', { recursive: true })
fs.writeFileSync('node_modules/prisma/build/index.js', '')
process.exit(fs.existsSync('offline') ? 1 : 0)
`,
  )
  fs.chmodSync(path.join(folder, 'bin/npm'), 0o755)
})
afterEach(() => fs.rmSync(folder, { recursive: true, force: true }))

function write(file: string, text: string): void {
  fs.writeFileSync(path.join(folder, file), text)
}

function prepare(withTests: boolean) {
  const { status, stderr } = spawnSync(
    process.execPath,
    [
      '--input-type=module',
      '-e',
      `import('./lib/ops/bootstrap.mjs').then(({ prepare }) => prepare({ withTests: ${String(withTests)} }))`,
    ],
    {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, PATH: `${path.join(folder, 'bin')}${path.delimiter}${process.env.PATH ?? ''}` },
    },
  )
  const log = path.join(folder, 'asked.txt')
  const asked = fs.existsSync(log) ? fs.readFileSync(log, 'utf8').trim().split('\n') : []
  fs.rmSync(log, { force: true })
  return { status, stderr, asked }
}

it('installs for a start what the app needs, and nothing again', () => {
  expect(prepare(false)).toMatchObject({ status: 0, asked: ['ci --omit=dev --ignore-scripts'] })
  expect(prepare(false)).toMatchObject({ status: 0, asked: [] })
})

it('adds what tests need and takes nothing away from under an app that runs', () => {
  prepare(false)
  write('node_modules/in-use.js', '')
  expect(prepare(true)).toMatchObject({ status: 0, asked: ['install --no-save --include=dev --ignore-scripts'] })
  expect(fs.existsSync(path.join(folder, 'node_modules/in-use.js'))).toBe(true)
  expect([prepare(true), prepare(false)]).toMatchObject([{ asked: [] }, { asked: [] }])
})

it('installs all at once for tests in a new clone, and all anew when the list has changed', () => {
  expect(prepare(true)).toMatchObject({ asked: ['ci --include=dev --ignore-scripts'] })
  write('package-lock.json', '{ }')
  expect(prepare(false)).toMatchObject({ asked: ['ci --omit=dev --ignore-scripts'] })
  expect(prepare(true)).toMatchObject({ asked: ['install --no-save --include=dev --ignore-scripts'] })
})

it('says so when it could not, and tries again the next time', () => {
  write('offline', '')
  expect(prepare(false)).toMatchObject({
    status: 1,
    stderr: expect.stringContaining('Check the network and run this again.'),
  })
  fs.rmSync(path.join(folder, 'offline'))
  expect(prepare(false)).toMatchObject({ status: 0, asked: ['ci --omit=dev --ignore-scripts'] })
})
