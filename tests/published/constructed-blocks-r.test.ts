import { checkAdditive } from '@/tests/support/additive-figures'
import cases from './data/blocks-additive.json'

// Made-up loaves, whole and with a missing cell; the figures are those of R.
cases.filter(({ id }) => id.startsWith('rcbd')).forEach(checkAdditive)
