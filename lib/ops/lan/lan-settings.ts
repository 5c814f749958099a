import type { NetworkInterfaceInfo } from 'node:os'
import { z } from 'zod'
import { privateAddresses, type LanAddress } from './networks'

const port = z.coerce.number().int().min(1).max(65_535)

const environment = z.object({
  /** The one name under which tablets find this bakery. */
  EVENDOUGH_LAN_NAME: z.string().min(1).optional(),
  /** Addresses of this machine to listen on, with commas between. */
  EVENDOUGH_LAN_ADDRESSES: z.string().min(1).optional(),
  /** Port of https. */
  EVENDOUGH_LAN_PORT: port.default(3443),
  /** Port of the page, over plain http, on how to trust the bakery's certificate. */
  EVENDOUGH_LAN_TRUST_PORT: port.default(3080),
})

export type LanSettings = {
  name: string
  port: number
  trustPort: number
  addresses: LanAddress[]
  /** What a browser opens. */
  origin: string
}

/** What the machine says of itself. */
export type Machine = { hostname: string; interfaces: NodeJS.Dict<NetworkInterfaceInfo[]> }

/**
 * Where the bakery is found on its network, out of the environment and the machine.
 * @throws Error in one line that names the setting at fault
 */
export function readLanSettings(env: NodeJS.ProcessEnv, machine: Machine): LanSettings {
  const read = environment.safeParse(env)
  if (!read.success)
    throw new Error(
      `Wrong settings: ${read.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`).join('; ')}`,
    )
  const { EVENDOUGH_LAN_NAME, EVENDOUGH_LAN_ADDRESSES, EVENDOUGH_LAN_PORT, EVENDOUGH_LAN_TRUST_PORT } = read.data
  if (env.EVENDOUGH_URL || env.EVENDOUGH_BEHIND_PROXY === '1')
    throw new Error(
      'Wrong settings: --lan brings https of its own, EVENDOUGH_URL and EVENDOUGH_BEHIND_PROXY are for a proxy of yours. Take either.',
    )
  if (EVENDOUGH_LAN_PORT === EVENDOUGH_LAN_TRUST_PORT)
    throw new Error('Wrong settings: EVENDOUGH_LAN_PORT and EVENDOUGH_LAN_TRUST_PORT are the same port')
  const name = nameOf(EVENDOUGH_LAN_NAME, machine.hostname)
  return {
    name,
    port: EVENDOUGH_LAN_PORT,
    trustPort: EVENDOUGH_LAN_TRUST_PORT,
    addresses: addressesOf(EVENDOUGH_LAN_ADDRESSES, machine),
    origin: new URL(`https://${name}:${EVENDOUGH_LAN_PORT}`).origin,
  }
}

const label = /^(?!-)[a-z\d-]{1,63}(?<!-)$/

function nameOf(set: string | undefined, hostname: string): string {
  const name = (set ?? `${hostname.split('.')[0] ?? ''}.local`).toLowerCase()
  const labels = name.split('.')
  if (name.length > 253 || !labels.every((one) => label.test(one)) || /^\d+$/.test(labels.at(-1) ?? ''))
    throw new Error(
      set === undefined
        ? `This machine’s own name, ${hostname}, cannot stand in an address. Choose one: EVENDOUGH_LAN_NAME=kitchen.local`
        : `Wrong settings: EVENDOUGH_LAN_NAME must be a name such as kitchen.local, of letters, digits and hyphens`,
    )
  // An authority may vouch for what lies below its name too: for `com` that would be half of the world.
  const isOfTheNetwork =
    labels.length >= 2 && ['local', 'lan', 'internal', 'home', 'test'].includes(labels.at(-1) ?? '')
  if (!isOfTheNetwork && labels.length < 3)
    throw new Error(
      'Wrong settings: EVENDOUGH_LAN_NAME must end in .local, .lan, .internal or .home, or have three parts as kitchen.bakery.example has',
    )
  return name
}

function addressesOf(set: string | undefined, { interfaces }: Machine): LanAddress[] {
  const own = privateAddresses(interfaces)
  const plain = ({ address, network }: LanAddress) => ({ address, network })
  if (set === undefined) {
    const found = own.filter(({ isOfTheBakery }) => isOfTheBakery).map(plain)
    if (found.length === 0)
      throw new Error(
        'This machine has no address on a network of the bakery (10.…, 172.16.… to 172.31.…, 192.168.…). Connect it and start again, or name the address: EVENDOUGH_LAN_ADDRESSES=192.168.1.20',
      )
    return found
  }
  return [...new Set(set.split(',').map((one) => one.trim()))].map((wanted) => {
    const found = own.find(({ address }) => address === wanted)
    if (!found)
      throw new Error(
        `Wrong settings: EVENDOUGH_LAN_ADDRESSES: ${wanted} is no private address of this machine. It has ${own.map(({ address }) => address).join(', ')}. An address that the whole world can reach needs a proxy with a certificate of its own: see EVENDOUGH_URL.`,
      )
    return plain(found)
  })
}
