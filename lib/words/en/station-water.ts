/** The water of a dough that is not mixed yet, as tablets and the desk tell it. */
export const stationWater = {
  title: 'Water for this dough',
  is: 'Water: {temp}',
  from: 'For a dough of {target}, as planned: flour {flour}, room {room}, and {rise} by mixing.',
  friction: {
    learned: 'How much mixing warms it is learned from {count} doughs of {mixer}.',
    learnedOfTrial: 'How much mixing warms it is learned from {count} doughs of this trial: its plan names no mixer.',
    mixer:
      'How much mixing warms it stands under Equipment for {mixer}, until four of its doughs have all four temperatures read.',
    usual:
      'How much mixing warms it is a usual figure, until four doughs have all four temperatures read: flour, room, water, dough.',
    corrected: 'How much mixing warms it is what today’s first dough, {code}, came to.',
  },
  guess: {
    friction: 'A guess: those doughs were few, of another size or mixed for less time.',
    heat: 'A guess: of some of what goes in nobody wrote down the composition.',
  },
  odd: 'That mixing warms a dough by {rise} is hardly so. Look at the temperatures that were read, and at the mixing time.',
  missing: {
    flour: 'Read the flour’s temperature first.',
    room: 'Read the room’s temperature first.',
    both: 'Read the temperatures of the flour and of the room first.',
  },
  ice: 'No water is that cold: use melting ice for {share} of it, or colder flour.',
  iceWithoutTap:
    'No water is that cold: use ice, or colder flour. How much ice tells the calculator, from the temperature of the tap.',
  someIce: 'From a tap of {tap}, {share} of it is melting ice.',
  tooCold:
    'No water brings this dough to {target}: it would have to be {temp}, and so much ice does not melt in time. Cool the flour or the room first.',
  tooHot:
    'No water brings this dough to {target}: it would have to be {temp}, and above {most} water harms yeast. Warm the flour or the room first.',
  unknown: {
    'no-plain-water': 'There is no plain water in the final dough to set the temperature with.',
    'friction-too-high': 'The mixer’s friction and the mixing time make more than 40 °C; look at the equipment.',
  },
  meltsInMixer: 'Ice in small pieces goes into the mixer with the water and melts there. Start at once.',
  scalds: 'Hot water scalds: draw it low and slowly, and keep your hands off.',
  notWorkedOut: 'Nothing can be worked out from these temperatures. Look at them.',
  differ:
    'The doughs of this trial need water of different temperatures, and those would tell which is which. They stand at the desk, for whoever opens this dough’s key.',
} as const
