import 'server-only'

export const pinLength = 6

/**
 * Whether a PIN is one that somebody would try first: one digit or two in turn, a run up or down, the same three twice,
 * or with a year of birth at an end.
 * @param pin six digits
 * Source: common practice, no source.
 */
export function isSimplePin(pin: string): boolean {
  const digits = Array.from(pin, Number)
  const steps = digits.slice(1).map((digit, i) => (digit - (digits[i] ?? 0) + 10) % 10)
  const isRun = [0, 1, 9].some((step) => steps.every((each) => each === step))
  const isTwoInTurn = digits.every((digit, i) => digit === digits[i % 2])
  const isThreeTwice = pin.slice(0, 3) === pin.slice(3)
  return isRun || isTwoInTurn || isThreeTwice || isYearOfBirth(pin.slice(0, 4)) || isYearOfBirth(pin.slice(2))
}

/** Of anybody who may work in a bakery, and of their children. */
function isYearOfBirth(digits: string): boolean {
  return digits >= '1930' && digits <= '2029'
}
