import { checkDunnett } from '@/tests/support/dunnett-figures'
import { checkOneWay } from '@/tests/support/one-way-figures'
import dunnett from './data/dunnett-examples.json'
import oneWay from './data/oneway-r-data-sets.json'

// A. J. Dobson, An Introduction to Statistical Modelling, 1983: dried weight of plants, as carried by R, data set `PlantGrowth`.
oneWay.filter(({ id }) => id === 'plantgrowth').forEach(checkOneWay)
dunnett.filter(({ id }) => id === 'plantgrowth').forEach(checkDunnett)
