import { checkDunnett } from '@/tests/support/dunnett-figures'
import { checkOneWay } from '@/tests/support/one-way-figures'
import dunnett from './data/dunnett-examples.json'
import oneWay from './data/oneway-r-data-sets.json'

// G. Beall, Biometrika 32, 1942: insects under six sprays, as carried by R, data set `InsectSprays`.
oneWay.filter(({ id }) => id === 'insectsprays').forEach(checkOneWay)
dunnett.filter(({ id }) => id === 'insectsprays-greater').forEach(checkDunnett)
