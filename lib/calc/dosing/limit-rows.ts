export const LIMIT_REGIONS = ['eu', 'us', 'ca', 'uk', 'cn', 'codex'] as const
export type LimitRegion = (typeof LIMIT_REGIONS)[number]

export const LIMITED_SUBSTANCES = [
  'ammonium-persulphate',
  'ascorbic-acid',
  'azodicarbonamide',
  'benzoyl-peroxide',
  'calcium-alginate',
  'calcium-iodate',
  'calcium-peroxide',
  'calcium-stearoyl-lactylate',
  'cysteine',
  'datem',
  'enzyme-active-soy-flour',
  'ethoxylated-mono-and-diglycerides',
  'lecithin',
  'malted-barley-flour',
  'monocalcium-phosphate',
  'potassium-bromate',
  'potassium-persulphate',
  'propionates',
  'sodium-stearoyl-lactylate',
  'sodium-stearyl-fumarate',
  'sorbates',
] as const
export type LimitedSubstance = (typeof LIMITED_SUBSTANCES)[number]

export const LIMITED_FOODS = [
  'any-flour',
  'white-flour',
  'whole-wheat-flour',
  'bromated-flour',
  'flour-for-bread',
  'yeast-dough',
  'any-bread',
  'plain-bread',
  'bread-but-plain',
  'sliced-or-rye-prepacked',
  'part-baked-or-reduced-prepacked',
  'other-prepacked-bread',
  'unpacked-bread',
  'listed-prepacked-bread',
  'any-baked-goods',
] as const
export type LimitedFood = (typeof LIMITED_FOODS)[number]

/** What a figure counts: the substance as weighed, or the acid or the like in it; 'form-not-stated' where the text says neither. */
export const LIMIT_FORMS = [
  'as-weighed',
  'as-free-acid',
  'as-cysteine',
  'as-cysteine-hydrochloride',
  'form-not-stated',
] as const
export type LimitForm = (typeof LIMIT_FORMS)[number]

/** What the text says beside a figure: it is for the acid and its salts together; some of it may come by fermentation. */
export const LIMIT_NOTES = ['singly-or-together', 'may-come-from-fermentation'] as const
export type LimitNote = (typeof LIMIT_NOTES)[number]

export type LimitRow = {
  region: LimitRegion
  /** Substances that share the figure: it is for all of them together. */
  substances: readonly LimitedSubstance[]
  food: LimitedFood
  basis: 'flour' | 'finished-food'
  form: LimitForm
  rule: 'at-most' | 'quantum-satis' | 'forbidden'
  /** mg per kg of the basis, with the rule 'at-most'. */
  maxMgPerKg: number | null
  countsFlourContent: boolean
  notes: readonly LimitNote[]
  source: string
  /** 'read' in the source named, or 'from-memory'. */
  origin: 'read' | 'from-memory'
  /** Day on which somebody compared the figure with the text in force; null for never. */
  checkedOn: string | null
}

const plain = { form: 'as-weighed', countsFlourContent: false, notes: [], origin: 'read', checkedOn: null } as const

type Told = Pick<LimitRow, 'region' | 'substances' | 'food' | 'source'>
const onFlour = (maxMgPerKg: number, told: Told) =>
  ({ ...plain, basis: 'flour', rule: 'at-most', maxMgPerKg, ...told }) as const
const onBread = (maxMgPerKg: number, told: Told) =>
  ({ ...plain, basis: 'finished-food', rule: 'at-most', maxMgPerKg, ...told }) as const
const asNeeded = (told: Told) =>
  ({ ...plain, basis: 'flour', rule: 'quantum-satis', maxMgPerKg: null, ...told }) as const
const forbidden = (told: Told) => ({ ...plain, basis: 'flour', rule: 'forbidden', maxMgPerKg: null, ...told }) as const

const eu071 = 'Regulation (EC) 1333/2008, Annex II, 07.1'
const eu0621 = 'Regulation (EC) 1333/2008, Annex II, 06.2.1'
const canada = 'Health Canada, list 2, 18 December 2024'
const together = { notes: ['singly-or-together'] } as const
const propionatesInBread = {
  form: 'form-not-stated',
  notes: ['singly-or-together', 'may-come-from-fermentation'],
} as const
const stearoylLactylates = ['sodium-stearoyl-lactylate', 'calcium-stearoyl-lactylate'] as const

/**
 * Legal limits as they were read, or remembered, for flour and bread. None has been compared with the text in force, so
 * `checkedOn` is null throughout: limits change, and the competent authority decides. Parts per 100 of flour are given as
 * mg per kg.
 */
export const LIMIT_ROWS: readonly LimitRow[] = [
  {
    ...onFlour(45, { region: 'us', substances: ['azodicarbonamide'], food: 'any-flour', source: '21 CFR 172.806' }),
    countsFlourContent: true,
  },
  {
    ...onFlour(200, { region: 'us', substances: ['ascorbic-acid'], food: 'any-flour', source: '21 CFR 137.105' }),
    origin: 'from-memory',
  },
  onFlour(50, { region: 'us', substances: ['potassium-bromate'], food: 'bromated-flour', source: '21 CFR 137.155' }),
  onFlour(75, {
    region: 'us',
    substances: ['potassium-bromate'],
    food: 'whole-wheat-flour',
    source: 'review article quoting the US Food and Drug Administration',
  }),
  {
    ...onFlour(90, {
      region: 'us',
      substances: ['cysteine'],
      food: 'yeast-dough',
      source: '21 CFR 184.1271, 184.1272: 0.009 part total L-cysteine per 100 parts of flour',
    }),
    form: 'as-cysteine',
  },
  onFlour(5000, {
    region: 'us',
    substances: ['calcium-stearoyl-lactylate'],
    food: 'yeast-dough',
    source: '21 CFR 172.844',
  }),
  onFlour(5000, {
    region: 'us',
    substances: ['sodium-stearoyl-lactylate'],
    food: 'any-baked-goods',
    source: '21 CFR 172.846',
  }),
  onFlour(5000, {
    region: 'us',
    substances: ['sodium-stearyl-fumarate'],
    food: 'any-baked-goods',
    source: '21 CFR 172.826',
  }),
  onFlour(5000, {
    region: 'us',
    substances: ['ethoxylated-mono-and-diglycerides'],
    food: 'yeast-dough',
    source: '21 CFR 172.834',
  }),
  onFlour(7500, { region: 'us', substances: ['malted-barley-flour'], food: 'any-flour', source: '21 CFR 137.105' }),
  onFlour(5000, { region: 'us', substances: ['enzyme-active-soy-flour'], food: 'any-bread', source: '21 CFR 136.110' }),
  onFlour(7500, { region: 'us', substances: ['monocalcium-phosphate'], food: 'any-bread', source: '21 CFR 136.110' }),
  onBread(20, {
    region: 'us',
    substances: ['calcium-alginate'],
    food: 'any-baked-goods',
    source: '21 CFR 184.1187: 0.002 % as served',
  }),
  asNeeded({ region: 'us', substances: ['datem'], food: 'any-baked-goods', source: '21 CFR 184.1101' }),
  asNeeded({ region: 'us', substances: ['lecithin'], food: 'any-baked-goods', source: '21 CFR 184.1400' }),
  {
    ...asNeeded({ region: 'us', substances: ['propionates'], food: 'any-baked-goods', source: '21 CFR 184.1221' }),
    origin: 'from-memory',
  },
  asNeeded({ region: 'eu', substances: ['ascorbic-acid'], food: 'any-flour', source: eu0621 }),
  asNeeded({ region: 'eu', substances: ['cysteine'], food: 'any-flour', source: eu0621 }),
  {
    ...asNeeded({
      region: 'eu',
      substances: ['lecithin'],
      food: 'any-bread',
      source: 'European Union; no text looked up',
    }),
    origin: 'from-memory',
  },
  {
    ...onBread(3000, { region: 'eu', substances: stearoylLactylates, food: 'bread-but-plain', source: eu071 }),
    ...together,
  },
  forbidden({ region: 'eu', substances: stearoylLactylates, food: 'plain-bread', source: eu071 }),
  {
    ...onBread(3000, { region: 'eu', substances: ['propionates'], food: 'sliced-or-rye-prepacked', source: eu071 }),
    ...propionatesInBread,
  },
  {
    ...onBread(2000, {
      region: 'eu',
      substances: ['propionates'],
      food: 'part-baked-or-reduced-prepacked',
      source: eu071,
    }),
    ...propionatesInBread,
  },
  {
    ...onBread(1000, { region: 'eu', substances: ['propionates'], food: 'other-prepacked-bread', source: eu071 }),
    ...propionatesInBread,
  },
  forbidden({ region: 'eu', substances: ['propionates'], food: 'unpacked-bread', source: eu071 }),
  {
    ...onBread(2000, { region: 'eu', substances: ['sorbates'], food: 'listed-prepacked-bread', source: eu071 }),
    ...together,
    form: 'as-free-acid',
  },
  {
    ...forbidden({
      region: 'eu',
      substances: ['azodicarbonamide'],
      food: 'any-flour',
      source: 'European Union; no text looked up',
    }),
    origin: 'from-memory',
  },
  {
    ...forbidden({
      region: 'eu',
      substances: ['potassium-bromate'],
      food: 'any-flour',
      source: 'European Union; no text looked up',
    }),
    origin: 'from-memory',
  },
  forbidden({
    region: 'uk',
    substances: ['potassium-bromate'],
    food: 'any-flour',
    source: 'UK regulations of 1990, in a review article',
  }),
  onFlour(45, { region: 'ca', substances: ['azodicarbonamide'], food: 'flour-for-bread', source: canada }),
  onFlour(200, { region: 'ca', substances: ['ascorbic-acid'], food: 'flour-for-bread', source: canada }),
  {
    ...onFlour(90, { region: 'ca', substances: ['cysteine'], food: 'flour-for-bread', source: canada }),
    form: 'as-cysteine-hydrochloride',
  },
  onFlour(3750, { region: 'ca', substances: ['calcium-stearoyl-lactylate'], food: 'any-bread', source: canada }),
  onFlour(45, { region: 'ca', substances: ['calcium-iodate'], food: 'any-bread', source: canada }),
  {
    ...onFlour(100, {
      region: 'ca',
      substances: ['ammonium-persulphate', 'calcium-peroxide', 'potassium-persulphate'],
      food: 'any-bread',
      source: canada,
    }),
    ...together,
  },
  onFlour(250, { region: 'ca', substances: ['ammonium-persulphate'], food: 'white-flour', source: canada }),
  onFlour(150, { region: 'ca', substances: ['benzoyl-peroxide'], food: 'white-flour', source: canada }),
  {
    ...forbidden({
      region: 'ca',
      substances: ['potassium-bromate'],
      food: 'any-flour',
      source: 'Canada; no text looked up',
    }),
    origin: 'from-memory',
  },
  forbidden({
    region: 'cn',
    substances: ['benzoyl-peroxide'],
    food: 'any-flour',
    source: 'Xinhua, 1 March 2011: from 1 May 2011',
  }),
  forbidden({
    region: 'cn',
    substances: ['calcium-peroxide'],
    food: 'any-flour',
    source: 'Xinhua, 1 March 2011: from 1 May 2011',
  }),
  {
    ...onFlour(300, {
      region: 'codex',
      substances: ['ascorbic-acid'],
      food: 'any-flour',
      source: 'Codex standard for wheat flour, CXS 152-1985',
    }),
    origin: 'from-memory',
  },
  {
    ...onFlour(2000, {
      region: 'codex',
      substances: ['lecithin'],
      food: 'any-flour',
      source: 'Codex standard for wheat flour, CXS 152-1985',
    }),
    origin: 'from-memory',
  },
]
