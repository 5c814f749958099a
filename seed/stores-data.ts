import type { Allergen, IngredientKind } from '../lib/kitchen/stores/ingredient-facts.input'
import { composition, type CompositionRow } from './composition'

export type DemoIngredient = {
  name: string
  labelName: string
  kind: IngredientKind
  /** Left out where no open table has it: the composition is then unknown. */
  row?: CompositionRow
  /** Null where nobody has checked: unknown, not none. */
  allergens: readonly Allergen[] | null
  dust?: true
  active?: { name: string; pct: number }
  customary?: { leastPct: number; mostPct: number; source: string }
  note?: string
  pack: { massG: number; supplier: string }
  /** Price of the pack from the start and as it is since three months ago, in euro. Invented. */
  prices: readonly [string, string?]
}

const mill = 'Weir Mill (invented)'
const grocer = 'Tallow & Thyme Wholesale (invented)'
const dairy = 'Low Meadow Dairy (invented)'
export const inventedNote = 'Invented: supplier, check of allergens and prices are made up.'

export const demoIngredients = {
  breadFlour: {
    name: 'Bread flour', labelName: 'Wheat flour', kind: 'flour', row: composition.breadFlourWhite,
    allergens: ['gluten'], dust: true,
    pack: { massG: 25_000, supplier: mill }, prices: ['17.25', '18.75'],
  },
  plainFlour: {
    name: 'Plain flour', labelName: 'Wheat flour', kind: 'flour', row: composition.allPurposeFlourWhite,
    allergens: ['gluten'], dust: true,
    pack: { massG: 25_000, supplier: mill }, prices: ['15.50', '16.75'],
  },
  wholemealFlour: {
    name: 'Wholemeal flour', labelName: 'Wholemeal wheat flour', kind: 'flour', row: composition.wholeWheatFlour,
    allergens: ['gluten'], dust: true,
    pack: { massG: 25_000, supplier: mill }, prices: ['19.00', '20.50'],
  },
  ryeFlour: {
    name: 'Rye flour, medium', labelName: 'Rye flour', kind: 'flour', row: composition.ryeFlourMedium,
    allergens: ['gluten'], dust: true,
    pack: { massG: 25_000, supplier: mill }, prices: ['18.00', '19.25'],
  },
  darkRyeFlour: {
    name: 'Rye flour, dark', labelName: 'Rye flour', kind: 'flour', row: composition.ryeFlourDark,
    allergens: ['gluten'], dust: true,
    pack: { massG: 25_000, supplier: mill }, prices: ['17.50'],
  },
  wheatBran: {
    name: 'Wheat bran', labelName: 'Wheat bran', kind: 'seed_or_grain', row: composition.wheatBran,
    allergens: ['gluten'], dust: true,
    pack: { massG: 15_000, supplier: mill }, prices: ['9.75'],
  },
  gluten: {
    name: 'Wheat gluten', labelName: 'Wheat gluten', kind: 'improver', row: composition.vitalWheatGluten,
    allergens: ['gluten'], dust: true,
    customary: { leastPct: 1, mostPct: 3, source: 'Invented supplier sheet' },
    pack: { massG: 25_000, supplier: mill }, prices: ['62.50'],
  },
  potatoFlakes: {
    name: 'Potato flakes', labelName: 'Dried potato', kind: 'other', row: composition.potatoFlakes,
    allergens: null, dust: true,
    note: 'Some makers add sulphites: ask before this goes into a dough.',
    pack: { massG: 10_000, supplier: grocer }, prices: ['28.00'],
  },
  water: {
    name: 'Water', labelName: 'Water', kind: 'water', row: composition.waterTap,
    allergens: [],
    pack: { massG: 1_000_000, supplier: 'Town mains (invented)' }, prices: ['3.20'],
  },
  salt: {
    name: 'Salt', labelName: 'Salt', kind: 'salt', row: composition.saltTable,
    allergens: [],
    pack: { massG: 25_000, supplier: grocer }, prices: ['11.50'],
  },
  freshYeast: {
    name: 'Fresh yeast', labelName: 'Yeast', kind: 'leaven', row: composition.yeastFresh,
    allergens: [],
    pack: { massG: 1_000, supplier: grocer }, prices: ['2.60', '2.75'],
  },
  dryYeast: {
    name: 'Dried yeast', labelName: 'Yeast', kind: 'leaven', row: composition.yeastActiveDry,
    allergens: [], dust: true,
    pack: { massG: 500, supplier: grocer }, prices: ['5.40'],
  },
  butter: {
    name: 'Butter', labelName: 'Butter (milk)', kind: 'fat', row: composition.butterUnsalted,
    allergens: ['milk'],
    pack: { massG: 10_000, supplier: dairy }, prices: ['68.00', '74.50'],
  },
  sunflowerOil: {
    name: 'Sunflower oil', labelName: 'Sunflower oil', kind: 'fat', row: composition.oilSunflowerLinoleic,
    allergens: [],
    pack: { massG: 9_200, supplier: grocer }, prices: ['18.90'],
    note: 'A can of 10 L weighs about 9.2 kg (from memory).',
  },
  oliveOil: {
    name: 'Olive oil', labelName: 'Olive oil', kind: 'fat', row: composition.oilOlive,
    allergens: [],
    pack: { massG: 4_600, supplier: grocer }, prices: ['39.50', '36.00'],
  },
  milk: {
    name: 'Milk', labelName: 'Milk', kind: 'dairy', row: composition.milkWhole,
    allergens: ['milk'],
    pack: { massG: 10_300, supplier: dairy }, prices: ['9.80', '10.40'],
  },
  skimMilkPowder: {
    name: 'Skim milk powder', labelName: 'Skimmed milk powder', kind: 'dairy', row: composition.milkPowderNonfat,
    allergens: ['milk'], dust: true,
    pack: { massG: 25_000, supplier: dairy }, prices: ['82.50'],
  },
  buttermilk: {
    name: 'Buttermilk', labelName: 'Buttermilk', kind: 'dairy', row: composition.buttermilkLowfat,
    allergens: ['milk'],
    pack: { massG: 5_000, supplier: dairy }, prices: ['6.40'],
  },
  yoghurt: {
    name: 'Yoghurt', labelName: 'Yoghurt (milk)', kind: 'dairy', row: composition.yoghurtWhole,
    allergens: ['milk'],
    pack: { massG: 5_000, supplier: dairy }, prices: ['9.90'],
  },
  cream: {
    name: 'Cream', labelName: 'Cream (milk)', kind: 'dairy', row: composition.creamHeavy,
    allergens: ['milk'],
    pack: { massG: 5_000, supplier: dairy }, prices: ['24.50'],
  },
  sugar: {
    name: 'Sugar', labelName: 'Sugar', kind: 'sugar', row: composition.sugarGranulated,
    allergens: [],
    pack: { massG: 25_000, supplier: grocer }, prices: ['24.00', '22.50'],
  },
  honey: {
    name: 'Honey', labelName: 'Honey', kind: 'sugar', row: composition.honey,
    allergens: [],
    pack: { massG: 12_500, supplier: grocer }, prices: ['71.25'],
  },
  maltSyrup: {
    name: 'Malt syrup', labelName: 'Barley malt syrup', kind: 'malt', row: composition.maltSyrup,
    allergens: ['gluten'],
    pack: { massG: 12_500, supplier: grocer }, prices: ['38.75'],
  },
  maltFlour: {
    name: 'Malt flour, diastatic', labelName: 'Barley malt flour', kind: 'malt', row: composition.barleyMaltFlour,
    allergens: ['gluten'], dust: true,
    customary: { leastPct: 0.2, mostPct: 1, source: 'Invented supplier sheet' },
    note: 'Its enzyme activity is on the lot’s own sheet; doses compare only within one assay.',
    pack: { massG: 10_000, supplier: mill }, prices: ['21.00'],
  },
  roastedMalt: {
    name: 'Roasted barley malt', labelName: 'Roasted barley malt', kind: 'malt',
    allergens: ['gluten'], dust: true,
    customary: { leastPct: 0.5, mostPct: 4, source: 'Invented supplier sheet' },
    note: 'For colour and taste; roasting has ended its enzymes.',
    pack: { massG: 5_000, supplier: mill }, prices: ['16.50'],
  },
  rolledOats: {
    name: 'Rolled oats', labelName: 'Oat flakes', kind: 'seed_or_grain',
    allergens: ['gluten'],
    pack: { massG: 20_000, supplier: mill }, prices: ['21.40'],
  },
  sunflowerSeed: {
    name: 'Sunflower seeds', labelName: 'Sunflower seeds', kind: 'seed_or_grain', row: composition.sunflowerSeed,
    allergens: null,
    note: 'Packed where sesame is packed: the supplier’s answer is awaited.',
    pack: { massG: 15_000, supplier: grocer }, prices: ['31.50'],
  },
  flaxseed: {
    name: 'Linseed', labelName: 'Linseed', kind: 'seed_or_grain', row: composition.flaxseed,
    allergens: [],
    pack: { massG: 15_000, supplier: grocer }, prices: ['29.25'],
  },
  raisins: {
    name: 'Raisins', labelName: 'Raisins', kind: 'other', row: composition.raisins,
    allergens: [],
    pack: { massG: 12_500, supplier: grocer }, prices: ['43.75'],
  },
  ascorbicAcid: {
    name: 'Ascorbic acid', labelName: 'Flour treatment agent: ascorbic acid', kind: 'improver',
    allergens: [], dust: true, active: { name: 'Ascorbic acid', pct: 99 },
    customary: { leastPct: 0.002, mostPct: 0.02, source: 'From memory; no source' },
    pack: { massG: 1_000, supplier: grocer }, prices: ['24.00'],
  },
} as const satisfies Record<string, DemoIngredient>

export const demoEquipment = {
  doseScale: { kind: 'scale', name: 'Dose scale', note: 'Invented. On the bench by the window.', resolutionG: 0.1, mostG: 3_000, leastG: 2, repeatabilityG: 0.1 },
  doughScale: { kind: 'scale', name: 'Dough scale', note: 'Invented.', resolutionG: 1, mostG: 30_000, leastG: 20, repeatabilityG: 1 },
  thermometer: { kind: 'thermometer', name: 'Probe thermometer', note: 'Invented. Read in melting ice each Monday.', resolutionC: 0.1 },
  coldTap: { kind: 'tap_water', name: 'Cold tap', note: 'Invented. At the mixer, after a minute.', tempC: 13 },
  hotTap: { kind: 'hot_water', name: 'Hot tap', note: 'Invented. At the sink, after half a minute.', tempC: 55, limitC: 60 },
  ice: { kind: 'ice', name: 'Flake ice', note: 'Invented.', tempC: 0 },
  mixer: { kind: 'mixer', name: 'Spiral mixer', note: 'Invented.', leastG: 2_000, mostG: 40_000, frictionCPerMin: 0.8 },
  proofer: { kind: 'proofer', name: 'Proofer', note: 'Invented. 24 to 38 °C.' },
  oven: { kind: 'oven', name: 'Deck oven', note: 'Invented.', decks: 3, placesPerDeck: 12 },
  tin: { kind: 'pan', name: 'Tin, large', note: 'Invented. 48 of them.', volumeMl: 1_900 },
  smallTin: { kind: 'pan', name: 'Tin, small', note: 'Invented. 60 of them.', volumeMl: 1_050 },
  volumeGauge: { kind: 'volume_gauge', name: 'Seed gauge', note: 'Invented. Filled with linseed; loaves from it are not tasted.', volumeMl: 5_000 },
} as const
