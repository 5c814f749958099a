import { mustBeLab } from './must-be-lab'
import type { Lab } from './types'

const RADIAN = Math.PI / 180
const TO_THE_7TH_25 = 25 ** 7

/**
 * Colour difference CIEDE2000 with kL = kC = kH = 1. About 1 is just seen side by side; a photo's own spread may be more.
 * @param first, second CIELAB; lightness 0 to 100, a and b within ±200
 * @returns ≥ 0, the same both ways round
 * @throws CalcError 'not-finite' | 'out-of-range', fields with the ending 1 or 2
 * Source: Sharma, Wu & Dalal (2005), Color Research and Application 30, doi 10.1002/col.20070.
 * @example deltaE2000({ lightness: 50, a: 2.5, b: 0 }, { lightness: 50, a: 3.2972, b: 0 }) // 1.0000
 */
export function deltaE2000(first: Lab, second: Lab): number {
  mustBeLab('1', first)
  mustBeLab('2', second)
  const chroma7 = ((Math.hypot(first.a, first.b) + Math.hypot(second.a, second.b)) / 2) ** 7
  const stretch = 1.5 - 0.5 * Math.sqrt(chroma7 / (chroma7 + TO_THE_7TH_25))
  const [one, two] = [polar(first, stretch), polar(second, stretch)]
  const grey = one.chroma * two.chroma === 0

  const turn = grey ? 0 : shortestTurn(two.hue - one.hue)
  const deltaHue = 2 * Math.sqrt(one.chroma * two.chroma) * Math.sin((turn / 2) * RADIAN)
  const [deltaLight, deltaChroma] = [second.lightness - first.lightness, two.chroma - one.chroma]

  const light = (first.lightness + second.lightness) / 2
  const chroma = (one.chroma + two.chroma) / 2
  const hue = grey ? one.hue + two.hue : meanHue(one.hue, two.hue)

  const t =
    1 -
    0.17 * Math.cos((hue - 30) * RADIAN) +
    0.24 * Math.cos(2 * hue * RADIAN) +
    0.32 * Math.cos((3 * hue + 6) * RADIAN) -
    0.2 * Math.cos((4 * hue - 63) * RADIAN)
  const scaleLight = 1 + (0.015 * (light - 50) ** 2) / Math.sqrt(20 + (light - 50) ** 2)
  const scaleChroma = 1 + 0.045 * chroma
  const scaleHue = 1 + 0.015 * chroma * t
  const rotation = 60 * Math.exp(-(((hue - 275) / 25) ** 2)) * RADIAN
  const rotationChroma = 2 * Math.sqrt(chroma ** 7 / (chroma ** 7 + TO_THE_7TH_25))

  const [l, c, h] = [deltaLight / scaleLight, deltaChroma / scaleChroma, deltaHue / scaleHue]
  // the form is positive; by rounding it may come out below zero for colours that are all but the same
  return Math.sqrt(Math.max(0, l * l + c * c + h * h - Math.sin(rotation) * rotationChroma * c * h))
}

/** Chroma and hue in degrees, 0 to 360, after a was stretched near the grey axis. */
function polar(colour: Lab, stretch: number): { chroma: number; hue: number } {
  const a = colour.a * stretch
  const degrees = Math.atan2(colour.b, a) / RADIAN
  return { chroma: Math.hypot(a, colour.b), hue: a === 0 && colour.b === 0 ? 0 : degrees < 0 ? degrees + 360 : degrees }
}

function shortestTurn(degrees: number): number {
  if (degrees > 180) return degrees - 360
  return degrees < -180 ? degrees + 360 : degrees
}

function meanHue(one: number, two: number): number {
  const mean = (one + two) / 2
  if (Math.abs(one - two) <= 180) return mean
  return mean < 180 ? mean + 180 : mean - 180
}
