import dns from 'node:dns/promises'
import { setTimeout as wait } from 'node:timers/promises'

const longestMs = 3_000

/**
 * Whether this machine finds a name at one of the addresses. Nobody else may find it all the same, and the other way
 * round; but where it does not, that is most often why a tablet does not.
 */
export async function nameLeadsHere(
  name: string,
  addresses: readonly string[],
  lookUp: (name: string) => Promise<{ address: string }[]> = (wanted) => dns.lookup(wanted, { all: true, family: 4 }),
): Promise<boolean> {
  const found = lookUp(name).then(
    (all) => all.some(({ address }) => addresses.includes(address)),
    () => false,
  )
  return Promise.race([found, wait(longestMs, false, { ref: false })])
}
