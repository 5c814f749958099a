import { checkOneWay } from '@/tests/support/one-way-figures'
import oneWay from './data/oneway-r-data-sets.json'

// Anonymous, Biometrika 35, 1948: weights of chicks on six feeds, as carried by R, data set `chickwts`.
oneWay.filter(({ id }) => id === 'chickwts').forEach(checkOneWay)
