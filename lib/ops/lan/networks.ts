import net from 'node:net'
import type { NetworkInterfaceInfo } from 'node:os'

/** One of this machine's addresses, and the network that it lies in, such as 192.168.1.0/24. */
export type LanAddress = { address: string; network: string }

/** Networks that no router carries out into the open (RFC 1918), and this machine's own. */
const privateNetworks = new net.BlockList()
privateNetworks.addSubnet('10.0.0.0', 8)
privateNetworks.addSubnet('172.16.0.0', 12)
privateNetworks.addSubnet('192.168.0.0', 16)
privateNetworks.addSubnet('127.0.0.0', 8)

/** What containers, virtual machines and tunnels bring along: no tablet of the bakery is there. */
const notOfTheBakery = /^(docker|br-|veth|virbr|vmnet|vboxnet|vEthernet|tun|tap|utun|wg|zt|tailscale)/

/** The private IPv4 addresses of a machine, each once. */
export function privateAddresses(
  interfaces: NodeJS.Dict<NetworkInterfaceInfo[]>,
): (LanAddress & { isOfTheBakery: boolean })[] {
  const found = Object.entries(interfaces).flatMap(([name, infos = []]) =>
    infos
      .filter(({ family, address, cidr }) => family === 'IPv4' && cidr !== null && privateNetworks.check(address))
      .map(({ address, cidr, internal }) => ({
        address,
        network: networkOf(address, Number(cidr?.split('/')[1])),
        isOfTheBakery: !internal && !notOfTheBakery.test(name),
      })),
  )
  return [...new Map(found.map((one) => [one.address, one])).values()]
}

/** Whether an address lies in a network that is written as 192.168.1.0/24. */
export function liesIn(address: string, network: string): boolean {
  const [base = '', length = ''] = network.split('/')
  const list = new net.BlockList()
  list.addSubnet(base, Number(length))
  return list.check(address)
}

function networkOf(address: string, length: number): string {
  const bits = address.split('.').reduce((sum, part) => sum * 256 + Number(part), 0)
  const size = 2 ** (32 - length)
  const base = bits - (bits % size)
  return `${[24, 16, 8, 0].map((shift) => Math.floor(base / 2 ** shift) % 256).join('.')}/${length}`
}
