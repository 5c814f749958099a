import path from 'node:path'
import { z } from 'zod'
import { logLevels } from '../db/log-levels'
import { photoRoom, poolSize } from '../db/settings'

const postgresAddress = z.string().regex(/^postgres(ql)?:\/\/.+/, 'must begin with postgresql://')

const environment = z.object({
  PORT: z.coerce.number().int().min(1).max(65_535).default(3000),
  EVENDOUGH_DATA: z.string().min(1).optional(),
  EVENDOUGH_ANCHORS: z.string().min(1).optional(),
  EVENDOUGH_STARTS: z.string().min(1).optional(),
  DATABASE_URL: postgresAddress.optional(),
  OWNER_DATABASE_URL: postgresAddress.optional(),
  /** Address under which people reach this install, when a proxy stands before it. */
  EVENDOUGH_URL: z
    .url({ protocol: /^https?$/, error: 'must be an address such as https://kitchen.example' })
    .optional(),
  EVENDOUGH_POOL: poolSize,
  EVENDOUGH_PHOTOS_GB: photoRoom,
  EVENDOUGH_LOG_LEVEL: z.enum(logLevels, { error: `must be one of ${logLevels.join(', ')}` }).optional(),
})

/** The settings that hold an address of a database. */
export type DatabaseSetting = 'DATABASE_URL' | 'OWNER_DATABASE_URL'

export type Settings = {
  port: number
  dataFolder: string
  /** The file that says each day where the records stand. Beside the data folder, so that it does not go with it. */
  anchorsFile: string
  /** The file that counts the starts, beside the data folder for the same reason. */
  startsFile: string
  url: string
  /** An outside PostgreSQL, instead of the embedded one. */
  outside?: { appUrl: string; ownerUrl: string }
}

/**
 * The install's settings out of the environment.
 * @throws Error in one line that names each setting at fault
 */
export function readSettings(env: NodeJS.ProcessEnv, root: string): Settings {
  const read = environment.safeParse(env)
  if (!read.success)
    throw new Error(
      `Wrong settings: ${read.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`).join('; ')}`,
    )
  const { PORT, EVENDOUGH_DATA, EVENDOUGH_ANCHORS, EVENDOUGH_STARTS, DATABASE_URL, OWNER_DATABASE_URL, EVENDOUGH_URL } =
    read.data
  if (OWNER_DATABASE_URL && !DATABASE_URL)
    throw new Error('Wrong settings: OWNER_DATABASE_URL without DATABASE_URL, the address of the app’s own role')
  const url = EVENDOUGH_URL ?? `http://localhost:${PORT}`
  if (!isSafeAddress(url))
    throw new Error(
      `Wrong settings: EVENDOUGH_URL must be an https address, or http on localhost: browsers keep the sign-in only there`,
    )
  const dataFolder = path.resolve(EVENDOUGH_DATA ?? path.join(root, '.data'))
  return {
    port: PORT,
    dataFolder,
    anchorsFile: path.resolve(EVENDOUGH_ANCHORS ?? `${dataFolder}-anchors.jsonl`),
    startsFile: path.resolve(EVENDOUGH_STARTS ?? `${dataFolder}-starts.json`),
    url,
    outside: DATABASE_URL ? { appUrl: DATABASE_URL, ownerUrl: OWNER_DATABASE_URL ?? DATABASE_URL } : undefined,
  }
}

function isSafeAddress(address: string): boolean {
  const { protocol, hostname } = new URL(address)
  return protocol === 'https:' || hostname === 'localhost' || hostname === '127.0.0.1'
}
