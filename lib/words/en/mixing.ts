import { stationWater } from './station-water'

/** Mixing water and premixes, as plans, sheets and the floor say them. */
export const mixing = {
  water: {
    title: 'Mixing water',
    parts: {
      tap: '{mass} from the tap at {temp}',
      hot: '{mass} hot at {temp}',
      chilled: '{mass} from the chiller at {temp}',
      ice: '{mass} ice at {temp}',
    },
    mix: 'Mix, check, then add: {temp}.',
    one: 'Check, then add: {temp}.',
    ice: stationWater.meltsInMixer,
    not: {
      'colder-than-all-ice':
        'No water brings this dough to {dough}: it would have to be {temp}, colder than ice can make it.',
      'too-much-ice':
        'No water brings this dough to {dough}: {temp} would take more than half of the water as ice, and that does not melt in time.',
      'never-melts': 'No water brings this dough to {dough}: {temp} would take more ice than melts in it.',
      'hotter-than-allowed':
        'No water brings this dough to {dough}: it would have to be {temp}, hotter than can be had or may go on a dough.',
    },
    nearest: 'Nearest:',
    comesOut: 'The dough then comes out at {temp}.',
    cooler: 'Cool the flour or the room first.',
    warmer: 'Warm the flour or the room first.',
    unknown: stationWater.unknown,
    usual: {
      hot: 'How hot the water comes is a guess: nobody wrote it down. Measure it, and add it under Stores, Equipment.',
      ice: 'That there is ice, and how cold, is a guess: nobody wrote it down. Add it under Stores, Equipment.',
    },
    guess: 'A guess until this mixer’s friction and the compositions are known.',
    scalds: stationWater.scalds,
    yeast: 'This is hot for yeast: pour it on the flour, never on the yeast.',
  },
  premix: {
    title: 'First a premix of {ingredient}',
    why: 'The scales cannot weigh the dose itself closely enough.',
    first: 'Weigh {take} of {ingredient} and {carrier} of {flour}. Mix evenly.',
    further: 'Weigh {take} of that premix and {carrier} of {flour}. Mix evenly.',
    portion:
      'Weigh {portion} of the last premix into this dough. In the list it stands for the {ingredient}; the {less} of {flour} in it are already off the flour.',
    onScale: '{mass} (on: {scale})',
    doughs: {
      one: 'It is enough for one dough. Write on it what it is and today’s date.',
      other: 'It is enough for {count} doughs. Write on it what it is and today’s date.',
    },
    dust: 'Dust of flour and enzymes can harm the lungs for good. Cover the bowl, stir slowly, shake and tip nothing. The supplier’s safety sheet and your local rules come first.',
    line: '{ingredient}, as premix',
  },
} as const
