const OFFSET = 0xcbf29ce484222325n
const PRIME = 0x100000001b3n

/**
 * 64-bit FNV-1a hash of a text's UTF-8 bytes; spreads a stored seed over 64 bits. Not for secrets.
 * @returns 0 ≤ h < 2⁶⁴
 * Source: Fowler, Noll & Vo, RFC 9923, FNV-1a with the 64-bit offset basis and prime.
 */
export function fnv1a(text: string): bigint {
  let hash = OFFSET
  for (const byte of new TextEncoder().encode(text)) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * PRIME)
  return hash
}
