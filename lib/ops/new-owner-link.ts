import fs from 'node:fs'
import path from 'node:path'
import { closeDb } from '../db/client'
import { runningPort } from '../db/embedded/server'
import { lockFolder } from '../db/folder-lock'
import { findOwners } from '../kitchen/people/find-owners'
import { makeOwnerLink } from '../kitchen/people/make-owner-link'
import type { Result } from '../kitchen/result'
import { embeddedAppUrl, openDatabase } from './open-database'
import { readOrMakeSecrets } from './secrets'
import type { Settings } from './settings'

/**
 * `npm start -- --new-owner-link[=address[,bakery]]`: a link by which an owner chooses a new password, beside a start that
 * runs or without one. Whoever may read the data folder, or has the database's address, may do that.
 * @returns the lines to say
 * @throws Error in one line or few that say what is missing
 */
export async function newOwnerLink(named: string | undefined, settings: Settings): Promise<string> {
  const { appUrl, stop } = await reach(settings)
  process.env.DATABASE_URL = appUrl
  try {
    const [email, bakery] =
      named === undefined
        ? []
        : [named.split(',', 1)[0], named.includes(',') ? named.slice(named.indexOf(',') + 1) : undefined]
    const onMachine = { address: 'this machine', device: 'this machine' }
    const owners = mustAnswer(
      await findOwners.call({ ...onMachine, kind: 'desk', sessionSecret: null }, { email, bakery }),
    )
    const [owner, ...others] = owners
    if (!owner)
      throw new Error(
        named === undefined
          ? 'There is no bakery with an owner here yet.'
          : `No owner signs in as ${named}. Without an address the owners there are get listed: npm start -- --new-owner-link`,
      )
    if (others.length > 0)
      throw new Error(
        `There are several owners. Name one: npm start -- --new-owner-link=address,bakery\n${owners.map((one) => `${one.email},${one.bakery}  (${one.name})`).join('\n')}`,
      )
    const { secret } = mustAnswer(
      await makeOwnerLink.call(
        { ...onMachine, kind: 'job', job: 'owner-link', bakeryId: owner.bakeryId },
        { personId: owner.personId },
      ),
    )
    return `${owner.name}, owner of ${owner.bakery}, chooses a new password within an hour, by this link, which works once:\n${settings.url}/join/${secret}`
  } finally {
    await closeDb()
    await stop()
  }
}

function mustAnswer<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error('The database is busy or away. Try again in a minute.')
  return result.value
}

async function reach(settings: Settings): Promise<{ appUrl: string; stop(): Promise<void> | void }> {
  const { dataFolder, outside } = settings
  if (!outside && !fs.existsSync(path.join(dataFolder, 'secrets.json')))
    throw new Error(
      `There is no bakery in ${dataFolder}. If its data is elsewhere: EVENDOUGH_DATA=… npm start -- --new-owner-link`,
    )
  if (outside) return { appUrl: outside.appUrl, stop: () => undefined }
  const secrets = readOrMakeSecrets(dataFolder)
  const unlock = await lockFolder(dataFolder)
  if (unlock === 'taken') {
    const port = runningPort(dataFolder)
    if (port === null)
      throw new Error('A start of Evendough is under way on this folder. Try again when it has come up.')
    return { appUrl: embeddedAppUrl(port, secrets), stop: () => undefined }
  }
  const database = await openDatabase(settings, secrets).catch((error: unknown) => {
    unlock()
    throw error
  })
  return {
    appUrl: database.appUrl,
    async stop() {
      await database.stop()
      unlock()
    },
  }
}
