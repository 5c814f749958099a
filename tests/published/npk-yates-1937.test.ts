import { checkAdditive } from '@/tests/support/additive-figures'
import cases from './data/blocks-additive.json'

// F. Yates, The Design and Analysis of Factorial Experiments, 1937: peas, as carried by R, data set `npk`.
cases.filter(({ id }) => id === 'npk-n').forEach(checkAdditive)
