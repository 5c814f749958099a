import { checkDunnett } from '@/tests/support/dunnett-figures'
import dunnett from './data/dunnett-examples.json'

// P. H. Westfall et al., Multiple Comparisons and Multiple Tests, 1999: recovery time under blankets, as carried by R
// package multcomp, data set `recovery`.
dunnett.filter(({ id }) => id.startsWith('recovery')).forEach(checkDunnett)
