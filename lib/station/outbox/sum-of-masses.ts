/** The sum of masses as they were typed, exact in their decimals; of none it is '0'. */
export function sumOfMasses(typed: readonly string[]): string {
  const digits = Math.max(0, ...typed.map((each) => each.split('.')[1]?.length ?? 0))
  const whole = typed.reduce((sum, each) => sum + inDigits(each, digits), 0n)
  const text = String(whole).padStart(digits + 1, '0')
  const at = text.length - digits
  return digits === 0 ? text : `${text.slice(0, at)}.${text.slice(at)}`
}

/** A typed number as a whole one of its last digits: '1.5' with two of them is 150. */
function inDigits(typed: string, digits: number): bigint {
  const [whole = '', part = ''] = typed.split('.')
  return BigInt(whole + part.padEnd(digits, '0'))
}
