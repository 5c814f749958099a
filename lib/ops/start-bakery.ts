import fs from 'node:fs'
import path from 'node:path'
import { seedDemo } from '../../seed/seed-demo'
import { closeDb } from '../db/client'
import { lockFolder } from '../db/folder-lock'
import { ensureBuilt } from './build'
import { leave, root } from './bootstrap.mjs'
import { openDatabase, type OpenDatabase } from './open-database'
import { prepareInstall } from './prepare-install'
import { readOrMakeSecrets } from './secrets'
import { mustHaveFreePort, serveApp } from './serve'
import { readSettings } from './settings'

/** `npm start`: everything between a fresh clone and a bakery in the browser. Says each step, stops at the first fault. */
export async function startBakery(args: readonly string[]): Promise<void> {
  const closing: (() => Promise<void> | void)[] = []
  const close = async () => {
    for (const step of closing.splice(0).reverse()) await step()
  }
  let stopping = false
  const stop = () => {
    if (stopping) return
    stopping = true
    console.log('Stopping …')
    void close().then(() => process.exit(0))
  }
  process.on('SIGINT', stop)
  process.on('SIGTERM', stop)
  try {
    await run(args, closing)
  } catch (error) {
    // A stop in the middle of starting makes the step that it interrupts fail; that is no fault.
    if (stopping) return
    await close()
    leave(error instanceof Error ? error.message : String(error))
  }
}

async function run(args: readonly string[], closing: (() => Promise<void> | void)[]): Promise<void> {
  const unknown = args.filter((arg) => arg !== '--empty')
  if (unknown.length > 0) throw new Error(`Not known: ${unknown.join(' ')}. There is: npm start, and npm start -- --empty for a real bakery.`)
  const settings = readSettings(process.env, root)
  await mustHaveFreePort(settings.port)
  const dataFolder = makeDataFolder(settings.dataFolder)
  if (!settings.outside) {
    const unlock = await lockFolder(dataFolder)
    if (unlock === 'taken') throw new Error(`${dataFolder} is in use by another start of Evendough. Stop that one, or choose another folder: EVENDOUGH_DATA=… npm start`)
    closing.push(unlock)
  }
  const secrets = readOrMakeSecrets(dataFolder)
  const database: OpenDatabase = await openDatabase(settings, secrets)
  closing.push(database.stop)
  process.env.DATABASE_URL = database.appUrl
  closing.push(closeDb)

  const wanted = settings.outside || args.includes('--empty') ? 'real' : 'demo'
  const { kind, firstRunSecret } = await prepareInstall(wanted)
  if (args.includes('--empty') && kind === 'demo') {
    throw new Error(`${dataFolder} holds the invented bakery, and stays so. For a real one choose another folder: EVENDOUGH_DATA=… npm start -- --empty`)
  }
  await ensureBuilt()
  const signInFile = path.join(dataFolder, 'first-sign-in.txt')
  if (kind === 'demo' && firstRunSecret) await seedDemo(firstRunSecret, signInFile)
  const app = await serveApp(settings.port, {
    DATABASE_URL: database.appUrl,
    NEXTAUTH_SECRET: process.env.EVENDOUGH_SECRET ?? secrets.authSecret,
    NEXTAUTH_URL: settings.url,
  })
  closing.push(app.stop)

  console.log(`\nEvendough is at ${settings.url}`)
  if (kind === 'demo') console.log(`\n${fs.readFileSync(signInFile, 'utf8')}\n(also in ${signInFile})`)
  if (kind === 'real' && firstRunSecret) console.log(`\nSet up your bakery within a day, by this link, which works once:\n${settings.url}/set-up/${firstRunSecret}`)
  console.log('\nCtrl-C stops it.')
  const code = await app.ended
  throw new Error(`The app ended by itself (exit ${code}). What it said is above.`)
}

function makeDataFolder(folder: string): string {
  try {
    // Others may enter, because as root the database runs as another user; what is secret in it has modes of its own.
    fs.mkdirSync(folder, { recursive: true, mode: 0o755 })
    fs.accessSync(folder, fs.constants.W_OK)
    return folder
  } catch (error) {
    throw new Error(`The data folder ${folder} cannot be written (${(error as NodeJS.ErrnoException).code}). Choose another: EVENDOUGH_DATA=… npm start`)
  }
}
