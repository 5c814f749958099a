/** The invented bakery and the people who work there. Nobody of these exists. */
export const demoBakery = {
  bakeryName: 'Osier Lane Bakehouse',
  timeZone: 'Europe/London',
  locale: 'en-GB',
  currency: 'EUR',
  region: 'eu',
  massUnits: 'metric',
  temperatureUnits: 'celsius',
} as const

export const demoPeople = [
  { key: 'owner', name: 'Marit Oduya', email: 'marit@osier-lane.example', role: 'owner' },
  { key: 'head', name: 'Teo Lindqvist', email: 'teo@osier-lane.example', role: 'head_baker' },
  { key: 'early', name: 'Ines Farrow', email: 'ines@osier-lane.example', role: 'shift_baker' },
  { key: 'late', name: 'Jonah Brandt', email: 'jonah@osier-lane.example', role: 'shift_baker' },
] as const
