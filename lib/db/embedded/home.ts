import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'

/** Where the embedded server's programs and files are, and as whom it runs. */
export type ServerHome = {
  binaries: string
  /** Holds `data/` and `server.log`. */
  folder: string
  /** Set when we are root: PostgreSQL refuses to run as root. */
  runAs?: { uid: number; gid: number }
  /** Set when programs and data had to go outside the data folder. */
  movedTo?: string
}

/** Chooses the server's home and makes its folder. As root it runs as another user, who must be able to enter it. */
export function makeServerHome(dataFolder: string, binaries: string): ServerHome {
  const folder = path.join(dataFolder, 'postgres')
  if (process.getuid?.() !== 0) {
    fs.mkdirSync(folder, { recursive: true, mode: 0o700 })
    return { binaries, folder }
  }
  const runAs = findServerUser()
  const key = createHash('sha256').update(path.resolve(dataFolder)).digest('hex').slice(0, 16)
  const movedTo = path.join('/var/lib/evendough', key)
  // Where its data is, there it stays: a changed mode must never lead to an empty bakery beside the full one.
  const livesElsewhere = fs.existsSync(path.join(movedTo, 'postgres', 'data', 'PG_VERSION'))
  const open = mayEnter(binaries) && mayEnter(dataFolder)
  if (open && !livesElsewhere) {
    giveFolder(folder, runAs)
    return { binaries, folder, runAs }
  }
  if (!livesElsewhere && fs.existsSync(path.join(folder, 'data', 'PG_VERSION'))) {
    throw new Error(
      `The database's own user can no longer enter ${dataFolder}. Let others enter the folders above it (chmod o+rx), then start again.`,
    )
  }
  fs.mkdirSync(movedTo, { recursive: true, mode: 0o755 })
  const copy = path.join(movedTo, 'native')
  fs.cpSync(binaries, copy, { recursive: true, verbatimSymlinks: true })
  const moved = path.join(movedTo, 'postgres')
  giveFolder(moved, runAs)
  return { binaries: copy, folder: moved, runAs, movedTo }
}

function giveFolder(folder: string, user: { uid: number; gid: number }): void {
  fs.mkdirSync(folder, { recursive: true, mode: 0o700 })
  fs.chownSync(folder, user.uid, user.gid)
}

const userNames = ['postgres', 'evendough']

function findServerUser(): { uid: number; gid: number } {
  for (const name of userNames) {
    const found = lookUpUser(name)
    if (found) return found
  }
  try {
    execFileSync(
      'useradd',
      ['--system', '--user-group', '--no-create-home', '--shell', '/usr/sbin/nologin', 'evendough'],
      { stdio: 'pipe' },
    )
  } catch {
    throw new Error(
      'PostgreSQL does not run as root, and no user could be made for it. Run this as an ordinary user, or make a user named "evendough".',
    )
  }
  const made = lookUpUser('evendough')
  if (!made) throw new Error('The user "evendough" was made but cannot be found. Run this as an ordinary user.')
  return made
}

function lookUpUser(name: string): { uid: number; gid: number } | undefined {
  const line = fs
    .readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((entry) => entry.startsWith(`${name}:`))
  const [, , uid, gid] = line?.split(':') ?? []
  return uid && gid ? { uid: Number(uid), gid: Number(gid) } : undefined
}

/** Whether every folder above lets other users through. */
function mayEnter(folder: string): boolean {
  for (let at = path.resolve(folder); ; at = path.dirname(at)) {
    if (fs.existsSync(at) && (fs.statSync(at).mode & 0o005) !== 0o005) return false
    if (at === path.dirname(at)) return true
  }
}
