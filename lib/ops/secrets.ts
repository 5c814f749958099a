import { randomBytes } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { z } from 'zod'

const secretsSchema = z.object({
  superuserPassword: z.string().min(32),
  ownerPassword: z.string().min(32),
  appPassword: z.string().min(32),
  /** Encrypts the sign-in cookie. */
  authSecret: z.string().min(43),
})
export type Secrets = z.infer<typeof secretsSchema>

/** The install's own secrets, made once and kept in a file that nobody else can read. */
export function readOrMakeSecrets(dataFolder: string): Secrets {
  const file = path.join(dataFolder, 'secrets.json')
  if (fs.existsSync(file)) return secretsSchema.parse(JSON.parse(fs.readFileSync(file, 'utf8')))
  const secret = () => randomBytes(32).toString('base64url')
  const made: Secrets = {
    superuserPassword: secret(),
    ownerPassword: secret(),
    appPassword: secret(),
    authSecret: secret(),
  }
  writePrivateFile(file, JSON.stringify(made, null, 2))
  return made
}

/** Writes a file that only its owner can read, whole or not at all. */
export function writePrivateFile(file: string, text: string): void {
  const draft = `${file}.new`
  fs.rmSync(draft, { force: true })
  fs.writeFileSync(draft, text, { mode: 0o600, flag: 'wx' })
  fs.renameSync(draft, file)
}
