/** The sum of masses as they were typed, exact in their decimals; of none it is '0'. */
export function sumOfMasses(typed: readonly string[]): string {
  const digits = mostDigits(typed)
  return asTyped(
    typed.reduce((sum, each) => sum + inDigits(each, digits), 0n),
    digits,
  )
}

/** What is left of a mass once another is taken off, likewise; null where it is less than nothing. */
export function massLess(from: string, off: string): string | null {
  const digits = mostDigits([from, off])
  const left = inDigits(from, digits) - inDigits(off, digits)
  return left < 0n ? null : asTyped(left, digits)
}

function mostDigits(typed: readonly string[]): number {
  return Math.max(0, ...typed.map((each) => each.split('.')[1]?.length ?? 0))
}

/** A typed number as a whole one of its last digits: '1.5' with two of them is 150. */
function inDigits(typed: string, digits: number): bigint {
  const [whole = '', part = ''] = typed.split('.')
  return BigInt(whole + part.padEnd(digits, '0'))
}

function asTyped(inLastDigits: bigint, digits: number): string {
  const text = String(inLastDigits).padStart(digits + 1, '0')
  const at = text.length - digits
  return digits === 0 ? text : `${text.slice(0, at)}.${text.slice(at)}`
}
