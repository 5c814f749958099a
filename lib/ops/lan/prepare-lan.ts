import { randomBytes } from 'node:crypto'
import type { FrontFacts } from '../../kitchen/stations/front-facts'
import { qrCode } from '../../kitchen/stations/qr-code'
import { say } from '../../words/say'
import { wordsIn } from '../../words/words'
import { mustHaveFreePort } from '../serve'
import type { Authority } from './authority'
import { certificateFacts } from './certificate-facts'
import { openFront, type Front } from './front'
import { keptAuthority } from './kept-authority'
import { readLanSettings, type LanSettings, type Machine } from './lan-settings'
import { keepRenewed } from './renewal'
import { certify } from './server-certificate'
import { terminalCode } from './terminal-code'
import { trustAnswers } from './trust-page'
import { nameLeadsHere } from './name-leads-here'
import { openTrustListener } from './trust-listener'

export type Lan = {
  origin: string
  /** What the app is told: the front that it may believe, and what its pages say of it. */
  forApp: Record<string, string>
  /** Opens the front, once the app answers on a port of 127.0.0.1. @returns what closes it */
  open(appPort: number): Promise<() => Promise<void>>
  /** How a tablet comes in, for whoever reads the terminal. */
  greeting(withCode: boolean): Promise<string>
}

/**
 * Everything of `--lan` that can be found out before the app runs: settings, ports, the authority of the data folder.
 * @throws Error in one line that says what to do
 */
export async function prepareLan(
  env: NodeJS.ProcessEnv,
  machine: Machine,
  dataFolder: string,
  { trustAnew, now }: { trustAnew: boolean; now: Date },
): Promise<Lan> {
  const settings = readLanSettings(env, machine)
  const { port, trustPort, addresses } = settings
  for (const { address } of addresses) {
    await mustHaveFreePort(port, address, 'EVENDOUGH_LAN_PORT')
    await mustHaveFreePort(trustPort, address, 'EVENDOUGH_LAN_TRUST_PORT')
  }
  // Asked while the database and the app come up. What only this machine opens, no tablet looks for.
  const opened = addresses.map(({ address }) => address)
  const leadsHere = opened.every((address) => address.startsWith('127.')) || nameLeadsHere(settings.name, opened)
  const authority = await keptAuthority(dataFolder, settings, {
    now,
    trustAnew,
    say: (sentence) => console.log(sentence),
  })
  const secret = randomBytes(32).toString('base64url')
  const facts: FrontFacts = {
    origin: settings.origin,
    trustAddresses: addresses.map(({ address }) => new URL(`http://${address}:${trustPort}`).origin),
    certificate: certificateFacts(authority),
  }
  return {
    origin: settings.origin,
    forApp: { EVENDOUGH_FRONT: JSON.stringify(facts), EVENDOUGH_FRONT_SECRET: secret },
    open: (appPort) => open(settings, authority, facts, { appPort, secret, now }),
    greeting: async (withCode) =>
      [
        ...(withCode ? [terminalCode(qrCode(facts.origin)), ''] : []),
        `Tablets come in at ${facts.origin}`,
        `A tablet that does not trust it yet opens first: ${facts.trustAddresses.join(' or ')}`,
        `Fingerprint of the certificate to compare (SHA-256): ${facts.certificate.fingerprint}`,
        ...((await leadsHere)
          ? []
          : [
              `This machine itself does not find ${settings.name} at ${opened.join(' or ')}, so tablets may not either. Give it that name in the network’s router, or choose one that leads here: EVENDOUGH_LAN_NAME=…`,
            ]),
      ].join('\n'),
  }
}

async function open(
  settings: LanSettings,
  authority: Authority,
  facts: FrontFacts,
  { appPort, secret, now }: { appPort: number; secret: string; now: Date },
): Promise<() => Promise<void>> {
  const { origin, port, trustPort } = settings
  const addresses = settings.addresses.map(({ address }) => address)
  const hostOf = (name: string) => new URL(`https://${name}:${port}`).host
  const { front: text } = wordsIn('en').stations
  const upstream = {
    appPort,
    secret,
    place: { host: new URL(origin).host, otherHosts: addresses.map(hostOf), origin },
    sentences: {
      400: text.odd,
      408: text.slow,
      413: text.large,
      421: say(text.elsewhere, 'en', { address: origin }),
      502: text.away,
    },
  }
  const certificate = await certify(authority, addresses, now)
  const answerTo = trustAnswers(facts, authority.certificate)
  const fronts: Front[] = []
  const listeners: { close(): Promise<void> }[] = []
  const renewal = keepRenewed(certificate, {
    authority,
    addresses,
    show: (renewed) => {
      for (const front of fronts) front.show(renewed)
    },
  })
  const close = async () => {
    renewal.stop()
    await Promise.all([...fronts, ...listeners].map((one) => one.close()))
  }
  try {
    for (const address of addresses) {
      fronts.push(await openFront({ address, port }, certificate, upstream))
      listeners.push(await openTrustListener({ address, port: trustPort }, answerTo))
    }
  } catch (error) {
    await close()
    const { code } = error as NodeJS.ErrnoException
    throw new Error(
      `The bakery’s network cannot be served at port ${port} or ${trustPort} (${code}). Start again, or choose others: EVENDOUGH_LAN_PORT=… EVENDOUGH_LAN_TRUST_PORT=… npm start -- --lan`,
      { cause: error },
    )
  }
  return close
}
