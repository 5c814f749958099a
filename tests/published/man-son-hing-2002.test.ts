import { gainVerdict } from '@/lib/calc/analysis/gain-verdict'
import { publishedCheck } from '@/tests/support/published-check'

// The paper's four levels, for an effect whose least important size is 1.
for (const [level, estimate, low, high, expected, clearly] of [
  ['definite: the whole interval at or above it', 2, 1.2, 2.8, 'better', 'clearly'],
  ['probable: the estimate above it, the interval over it', 1.4, 0.5, 2.3, 'better', 'not clearly'],
  ['possible: the estimate below it, the interval over it', 0.7, -0.2, 1.6, 'undecided', 'not clearly'],
  ['definitely not: the whole interval below it', 0.1, -0.6, 0.8, 'no-worthwhile-difference', 'not clearly'],
] as const) {
  const verdict = () => gainVerdict({ estimate, low, high, worthwhile: 1, goodDirection: 'larger' })
  const check = (what: string, word: string, got: () => string | undefined) =>
    publishedCheck({
      of: ['analysis/gain-verdict'],
      what: `${level}; ${what}`,
      source:
        'M. Man-Son-Hing et al., Determination of the clinical importance of study results, J. Gen. Intern. Med. 17, 2002',
      status: 'from memory; intervals made up',
      expected: word,
      got,
    })
  check('verdict', expected, () => verdict()?.verdict)
  check('clearly', clearly, () => (verdict()?.clearly === true ? 'clearly' : 'not clearly'))
}
