import { checkDunnett } from '@/tests/support/dunnett-figures'
import dunnett from './data/dunnett-examples.json'

// C. W. Dunnett, JASA 50, 1955, worked example: breaking strength of a fabric under three treatments (from memory).
dunnett.filter(({ id }) => id.startsWith('fabric')).forEach(checkDunnett)
