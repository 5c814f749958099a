import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeDb } from '../db/client'
import { lockFolder } from '../db/folder-lock'
import { builtWorker, ensureBuilt } from './build'
import { leave, root } from './bootstrap.mjs'
import { noteStart } from './note-start'
import { openDatabase, type OpenDatabase } from './open-database'
import { kindOfInstall, prepareInstall } from './prepare-install'
import { readOrMakeSecrets, writePrivateFile } from './secrets'
import { mustHaveFreePort, serveApp } from './serve'
import { readSettings } from './settings'

/** An owner's address may follow, and after a comma the bakery's name. */
const linkWord = /^--new-owner-link(?:=(.*))?$/

/** `--lan`: https for tablets. `--lan-demo`: the invented bakery as well. `--trust-anew`: although tablets lose their trust. */
const lanWords = ['--lan', '--lan-demo', '--trust-anew']

type Step = () => Promise<void> | void

/** Thrown to leave the start when somebody asked it to stop. */
class Stopped extends Error {}

/** `npm start`: everything between a fresh clone and a bakery in the browser. Says each step, stops at the first fault. */
export async function startBakery(args: readonly string[]): Promise<void> {
  // Whoever read what we say may be gone; the database must be stopped all the same.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => undefined)
  const closing: Step[] = []
  const asked = new AbortController()
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => asked.abort(new Stopped()))
  let fault: unknown
  try {
    mustBeKnown(args)
    const link = args.map((arg) => linkWord.exec(arg)).find((match) => match !== null)
    if (link) {
      const { newOwnerLink } = await import('./new-owner-link')
      console.log(await newOwnerLink(link[1], readSettings(process.env, root)))
      process.exit(0)
    }
    await run(args, closing, asked.signal)
  } catch (error) {
    fault = error
  }
  // A stop in the middle of starting may make the step that it interrupts fail; that is no fault.
  const stopping = asked.signal.aborted
  if (stopping) console.log('Stopping …')
  for (const step of closing.reverse()) await step()
  if (stopping) process.exit(0)
  leave(fault instanceof Error ? fault.message : String(fault))
}

async function run(args: readonly string[], closing: Step[], asked: AbortSignal): Promise<void> {
  const stopped = new Promise<never>((_, reject) => asked.addEventListener('abort', () => reject(new Stopped())))
  // Nobody may be waiting for it when it comes.
  stopped.catch(() => undefined)
  const settings = readSettings(process.env, root)
  await mustHaveFreePort(settings.port)
  const dataFolder = makeDataFolder(settings.dataFolder)
  if (!settings.outside) {
    const unlock = await lockFolder(dataFolder)
    if (unlock === 'taken')
      throw new Error(
        `${dataFolder} is in use by another start of Evendough. Stop that one, or choose another folder: EVENDOUGH_DATA=… npm start`,
      )
    closing.push(unlock)
  }
  const secrets = readOrMakeSecrets(dataFolder)
  const lan = args.includes('--lan') ? await lanOf(args, dataFolder) : undefined
  const url = lan?.origin ?? settings.url
  // Beside the database's start and the demo, which do not need the app: a third of a first start is saved.
  const built = ensureBuilt()
  built.catch(() => undefined)
  const database: OpenDatabase = await openDatabase(settings, secrets)
  closing.push(database.stop)
  asked.throwIfAborted()
  process.env.DATABASE_URL = database.appUrl
  process.env.EVENDOUGH_WORKER = builtWorker
  closing.push(closeDb)

  const wanted = settings.outside || args.includes('--empty') ? 'real' : 'demo'
  if (lan && !args.includes('--lan-demo') && ((await kindOfInstall()) ?? wanted) === 'demo')
    throw new Error(
      `${dataFolder} holds the invented bakery, or would: it is for one person to look at, so it is not put on the network unless asked for with npm start -- --lan --lan-demo. For a real bakery: EVENDOUGH_DATA=… npm start -- --lan --empty`,
    )
  const { kind, isNew, firstRunSecret } = await prepareInstall(wanted)
  if (args.includes('--empty') && kind === 'demo') {
    throw new Error(
      `${dataFolder} holds the invented bakery, and stays so. For a real one choose another folder: EVENDOUGH_DATA=… npm start -- --empty`,
    )
  }
  for (const line of await noteStart(settings.startsFile, isNew)) console.log(line)
  const signInFile = path.join(dataFolder, 'first-sign-in.txt')
  if (kind === 'demo' && firstRunSecret) {
    // The whole kitchen comes with it, which no later start needs.
    const { seedDemo } = await import('../../seed/seed-demo')
    const { closePool } = await import('../kitchen/heavy/in-pool')
    writePrivateFile(signInFile, await seedDemo(firstRunSecret))
    await closePool()
  }
  await Promise.race([built, stopped])
  const app = await serveApp(settings.port, {
    DATABASE_URL: database.appUrl,
    EVENDOUGH_WORKER: builtWorker,
    EVENDOUGH_ANCHORS: settings.anchorsFile,
    NEXTAUTH_SECRET: process.env.EVENDOUGH_SECRET ?? secrets.authSecret,
    NEXTAUTH_URL: url,
    ...lan?.forApp,
  })
  closing.push(app.stop)
  asked.throwIfAborted()
  if (lan) {
    closing.push(await lan.open(settings.port))
    asked.throwIfAborted()
    console.log(`\n${await lan.greeting(process.stdout.isTTY)}`)
  }

  console.log(`\nEvendough is at ${url}${lan ? `, and on this machine at ${settings.url}` : ''}`)
  if (kind === 'demo') console.log(`\n${fs.readFileSync(signInFile, 'utf8')}\n(also in ${signInFile})`)
  if (kind === 'real' && firstRunSecret)
    console.log(`\nSet up your bakery within a day, by this link, which works once:\n${url}/set-up/${firstRunSecret}`)
  console.log('\nCtrl-C stops it.')
  const code = await Promise.race([app.ended, stopped])
  throw new Error(`The app ended by itself (exit ${code}). What it said is above.`)
}

function mustBeKnown(args: readonly string[]): void {
  const unknown = args.filter((arg) => arg !== '--empty' && !lanWords.includes(arg) && !linkWord.test(arg))
  if (unknown.length > 0)
    throw new Error(
      `Not known: ${unknown.join(' ')}. There is: npm start, npm start -- --empty for a real bakery, npm start -- --lan for tablets in the bakery’s network, and npm start -- --new-owner-link for an owner who cannot sign in.`,
    )
  const alone = args.find((arg) => lanWords.includes(arg))
  if (alone && !args.includes('--lan')) throw new Error(`${alone} goes with --lan: npm start -- --lan ${alone}`)
}

/** Loaded only when it is asked for: certificates, words and codes take their time. */
async function lanOf(args: readonly string[], dataFolder: string) {
  const { prepareLan } = await import('./lan/prepare-lan')
  const machine = { hostname: os.hostname(), interfaces: os.networkInterfaces() }
  return prepareLan(process.env, machine, dataFolder, {
    trustAnew: args.includes('--trust-anew'),
    now: new Date(),
  })
}

function makeDataFolder(folder: string): string {
  try {
    // Others may enter, because as root the database runs as another user; what is secret in it has modes of its own.
    fs.mkdirSync(folder, { recursive: true, mode: 0o755 })
    fs.accessSync(folder, fs.constants.W_OK)
    return folder
  } catch (error) {
    throw new Error(
      `The data folder ${folder} cannot be written (${(error as NodeJS.ErrnoException).code}). Choose another: EVENDOUGH_DATA=… npm start`,
    )
  }
}
