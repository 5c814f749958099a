import type { DoughTemps } from './tell-water.input'

/** What was read on a dough, °C, of what its water is told by and learned from. */
export function tempsOf(valueOf: (code: string) => number | null): DoughTemps {
  return {
    flourC: valueOf('flour-temp'),
    roomC: valueOf('room-temp'),
    waterC: valueOf('water-temp'),
    doughC: valueOf('dough-temp'),
  }
}
