import { checkLimitOnFlour } from '@/tests/support/limit-checks'
import { ADDITIVE_LIMITS as L } from './data/additive-limits'

// Health Canada, list 2 (bleaching, maturing and dough conditioning agents), 2024; not compared with the text in force.
checkLimitOnFlour('P-5.1', L.azodicarbonamideCanada)
checkLimitOnFlour('P-5.3', L.ascorbicAcidCanada)
checkLimitOnFlour('P-5.5', L.cysteineCanada)
checkLimitOnFlour('P-5.6', L.calciumStearoylLactylateCanada)
checkLimitOnFlour('P-5.10', L.calciumPeroxideCanada)
checkLimitOnFlour('P-5.10', L.calciumIodateCanada)
