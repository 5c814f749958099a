import { browningIndex } from '@/lib/calc/colour/browning-index'
import { publishedCheck } from '@/tests/support/published-check'

const check = (lightness: number, a: number, b: number, expected: number, divisor: '0.17' | '0.172') =>
  publishedCheck({
    id: 'P-8.5',
    of: ['colour/browning-index'],
    what: `browning index of L ${lightness}, a ${a}, b ${b}, divided by ${divisor}`,
    source:
      divisor === '0.17'
        ? 'E. Palou et al., Journal of Food Science 64, 1999'
        : 'some later papers than Palou et al. 1999',
    status: 'from memory',
    expected,
    got: () => browningIndex({ lightness, a, b }, divisor),
    tolerance: { absolute: 5e-4 },
    why: 'three decimals',
  })

check(60, 10, 30, 79.5, '0.17')
check(75, 3, 20, 33.334, '0.17')
// the same x, 0.445150, over the other divisor
check(60, 10, 30, (100 * (0.44515 - 0.31)) / 0.172, '0.172')
