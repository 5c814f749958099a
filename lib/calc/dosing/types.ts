/** An enzyme activity means nothing without the assay that found it. */
export type Activity = { method: string; unit: string }

/** How strong a source of an active substance is. `strengthShare` is the part of it still there, as measured on the lot. */
export type ActiveStrength =
  | { by: 'share'; substance: string; activeShare: number; strengthShare: number }
  | { by: 'activity'; activity: Activity; unitsPerG: number; strengthShare: number }

/** One line of the formula that brings an active substance. */
export type ActiveSource = {
  lineId: string
  substance: string
  /** Chemical form in which `activeShare` is declared: 'calcium propionate', 'L-cysteine hydrochloride monohydrate'. */
  form: string
  massG: number
  activeShare: number
}

/** Mass of one form in the mass of another: propionic acid from calcium propionate, 0.79562. */
export type FormConversion = { from: string; to: string; factor: number }

/** `form` is the one that the range is stated in: a range of the salt is another than one of its acid. */
export type CustomaryRange = {
  substance: string
  form: string
  minMgPerKgFlour: number
  maxMgPerKgFlour: number
  source: string
}

export type DoseLimit = {
  id: string
  jurisdiction: string
  food: string
  basis: 'flour' | 'finished-food'
  /** Form in which the limit is stated; sources in other forms are converted. */
  form: string
  /** Substances that share the limit. */
  substances: readonly string[]
  isPermitted: boolean
  /** mg per kg of the basis; null is 'as much as needed'. */
  maxMgPerKg: number | null
  /** What the flour already contains counts too. */
  countsFlourContent: boolean
  /** Limits are printed rounded: 2.05 g in 100 lb is 45.195 ppm and is printed as 45. Part of the limit, 0 to 0.005. */
  toleranceShare: number
  source: string
  /** Day on which somebody compared the figure with the text in force; null for never. */
  checkedOn: string | null
}
