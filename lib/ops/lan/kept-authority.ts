import { createPrivateKey, X509Certificate } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { z } from 'zod'
import { writePrivateFile } from '../secrets'
import { makeAuthority, type Authority } from './authority'
import { liesIn, type LanAddress } from './networks'

const keptSchema = z.strictObject({
  name: z.string().min(1),
  /** Of https: to a browser another port is another place, with nothing in it. */
  port: z.number().int(),
  networks: z.array(z.string()),
  certificate: z.string(),
  key: z.string(),
})
type Kept = z.infer<typeof keptSchema>

/** Under what this start wants to be found. */
export type Wanted = { name: string; port: number; addresses: readonly LanAddress[] }

/** No clock that is right says less; small machines wake up in 1970. */
const earliest = new Date('2026-01-01T00:00:00Z')
const lastYearMs = 365 * 86_400_000

/**
 * The authority of the data folder, made at the first start. One that tablets trust is never replaced by itself: where
 * this start would make their trust or what lies on them worth nothing, it says so and ends.
 * @param trustAnew whether the person who starts it has confirmed that
 * @param say is told in a sentence what somebody should know and nobody must do at once
 * @throws Error that says what tablets would lose, and both ways on
 */
export async function keptAuthority(
  dataFolder: string,
  wanted: Wanted,
  { now, trustAnew, say }: { now: Date; trustAnew: boolean; say(sentence: string): void },
): Promise<Authority> {
  if (now < earliest)
    throw new Error(
      `This machine’s clock says ${dayOf(now)}. Set it right and start again: a certificate holds from one day to another.`,
    )
  const file = path.join(dataFolder, 'lan-authority.json')
  const kept = read(file)
  const isMade = !kept || (trustAnew && isWorthReplacing(kept, wanted, now))
  if (kept && !isMade) {
    if (!trustAnew) mustBeFoundAs(kept, wanted, now)
    else if (kept.port === wanted.port)
      say('--trust-anew was not needed: the certificate that tablets trust still fits and is kept.')
  }
  const { name, networks, certificate, key } =
    kept && !isMade ? kept : await makeAuthority(wanted.name, networksOf(wanted), now)
  const authority = { name, networks, certificate, key }
  if (isMade || kept?.port !== wanted.port)
    writePrivateFile(file, JSON.stringify({ ...authority, port: wanted.port } satisfies Kept, null, 2))
  for (const { address } of wanted.addresses.filter((one) => !networks.some((network) => liesIn(one.address, network))))
    say(
      `The certificate that tablets trust does not vouch for ${address}, which is in another network than before: there they find this bakery by its name alone.`,
    )
  if (endOf(certificate).getTime() - now.getTime() < lastYearMs)
    say(
      `The certificate that tablets trust ends on ${dayOf(endOf(certificate))}. Before that, in a quiet hour: npm start -- --lan --trust-anew, and let each tablet trust the new one.`,
    )
  return authority
}

/** @throws Error that says what tablets would lose */
function mustBeFoundAs(kept: Kept, wanted: Wanted, now: Date): void {
  const anew = 'To go on all the same: npm start -- --lan --trust-anew'
  if (kept.name !== wanted.name)
    throw new Error(
      `Tablets know this bakery as ${kept.name}; this start would be ${wanted.name}. Under another name each tablet has to trust a new certificate and to be set up again, and what lies on a tablet and was not sent yet stays behind: have it sent first. To keep the name: EVENDOUGH_LAN_NAME=${kept.name}. ${anew}`,
    )
  if (kept.port !== wanted.port)
    throw new Error(
      `Tablets know this bakery at port ${kept.port}; this start would be at ${wanted.port}. At another port each tablet has to be set up again, and what lies on a tablet and was not sent yet stays behind: have it sent first. To keep the port: EVENDOUGH_LAN_PORT=${kept.port}. ${anew}`,
    )
  if (now < beginOf(kept.certificate))
    throw new Error(
      `The certificate that tablets trust begins on ${dayOf(beginOf(kept.certificate))}, and this machine’s clock says ${dayOf(now)}. If the clock is wrong, set it and start again. If it was wrong when the certificate was made, each tablet has to trust a new one. ${anew}`,
    )
  if (endOf(kept.certificate) <= now)
    throw new Error(
      `The certificate that tablets trust ended on ${dayOf(endOf(kept.certificate))}. Each tablet has to trust a new one; what lies on it is kept. ${anew}`,
    )
}

/** Whether a new authority would bring anything: a word left in a start file must not cost the trust of every tablet. */
function isWorthReplacing(kept: Kept, wanted: Wanted, now: Date): boolean {
  return (
    kept.name !== wanted.name ||
    now < beginOf(kept.certificate) ||
    endOf(kept.certificate).getTime() - now.getTime() < lastYearMs ||
    wanted.addresses.some(({ address }) => !kept.networks.some((network) => liesIn(address, network)))
  )
}

function networksOf({ addresses }: Wanted): string[] {
  return [...new Set(addresses.map(({ network }) => network))]
}

/** @throws Error in one line when the file is there and no authority is in it: a new one would be one that nobody trusts */
function read(file: string): Kept | undefined {
  if (!fs.existsSync(file)) return undefined
  try {
    const kept = keptSchema.parse(JSON.parse(fs.readFileSync(file, 'utf8')))
    if (new X509Certificate(kept.certificate).checkPrivateKey(createPrivateKey(kept.key))) return kept
  } catch {
    // Which of its parts is broken does not help whoever reads the line.
  }
  throw new Error(
    `${file} does not hold the certificate and key that tablets trust. Put the file back from a copy of the data folder; without one, take it away, start again, and let each tablet trust the new certificate.`,
  )
}

function beginOf(certificate: string): Date {
  return new Date(new X509Certificate(certificate).validFrom)
}

function endOf(certificate: string): Date {
  return new Date(new X509Certificate(certificate).validTo)
}

function dayOf(moment: Date): string {
  return moment.toISOString().slice(0, 10)
}
