/** The result of a trial: what it showed, what it costs, what cannot be concluded. */
export const results = {
  title: 'Result',
  kicker: 'Trial {number}, result',
  about: 'About this trial',
  state: 'State',
  states: {
    draft: 'draft',
    proposed: 'waits for approval',
    approved: 'approved',
    baking: 'baking',
    closed: 'closed',
    declined: 'declined',
    stopped: 'stopped early',
  },
  closed: 'closed {date}',
  closedWhy: 'closed {date}: {why}',
  stopped: 'stopped {date}: {why}',
  question: 'Question',
  against: 'Against',
  version: '{formula}, version {number}',
  declared: 'Declared before baking',
  declaredText: {
    larger: '{measure}, larger is better; worth having from {margin}, at {confidence} confidence',
    smaller: '{measure}, smaller is better; worth having from {margin}, at {confidence} confidence',
    none: '{measure}, no good direction; worth having from {margin}, at {confidence} confidence',
  },
  kinds: {
    gain: 'a gain',
    no_worse: 'no worse than the control',
    same_as: 'the same as the control',
    which_dose: 'which dose',
    look_only: 'a look only',
  },
  kind: 'Looked for',
  holdsFor: 'Said of',
  holdsForText: { any_day: 'days like these', these_days: 'these mixing days only' },
  size: 'Unit',
  sizeText: {
    one: 'one dough; one mixing day, {doughs} of each, {loaves} loaves a dough',
    other: 'one dough; {count} mixing days, {doughs} of each on a day, {loaves} loaves a dough',
  },
  approved: 'Approved',
  planSeal: 'Plan',
  planSealed: '{seal}, its seal as it was approved',
  approvedText: '{date}, {name}',
  approvedByProposer: '{date}, {name}, by its proposer',
  approvedByCoAuthor: '{date}, {name}, by a co-author',
  control: 'Control',
  dough: 'Dough {letter}',

  headline: {
    before: 'There is nothing to show before a plan is approved',
    inProgress: { one: 'One of {planned} doughs is in', other: '{count} of {planned} doughs are in' },
    allIn: 'Every dough is in; the readings are still to be closed',
    sealBroken: 'Nothing is concluded: the book is not what was closed',
    noConclusion: 'This trial cannot say it',
    look: 'A look, without a verdict',
    noneBetter: 'No dough is shown to be better than the control',
    indication: 'An indication, not a verdict',
  },
  inProgressLead:
    'Nobody sees a comparison before the readings are closed: whoever looks at half a trial sees differences that are not there, and measures towards what they hope for.',
  allInLead:
    'Look through them under their codes. The comparison is shown to everybody at once, when the head baker or an owner closes the readings; from then on they stand.',
  soFar: {
    title: '{measure} so far, {unit}',
    note: 'Every dough in its order under its code: short lines are loaves, long ones their mean.',
    label: 'What was read of each dough, in their order. The means are in the table below.',
    day: 'Day {number}',
  },
  seal: {
    word: 'The book was changed',
    unsealedWord: 'Not sealed',
    whole:
      'What was declared, baked and read of this trial was sealed when its readings were closed. The rows in the book are others now.',
    dough: {
      code: 'The first thing that does not agree: the code of dough {code}.',
      arm: 'The first thing that does not agree: which of the planned doughs {code} is.',
      day: 'The first thing that does not agree: the mixing day of dough {code}.',
      plannedOrder: 'The first thing that does not agree: the place of dough {code} in its day.',
      state: 'The first thing that does not agree: what became of dough {code}.',
      stateWhy: 'The first thing that does not agree: why dough {code} was taken out.',
      begunAt: 'The first thing that does not agree: when dough {code} was begun.',
      doneAt: 'The first thing that does not agree: when dough {code} was done.',
      piecesMade: 'The first thing that does not agree: how many pieces of dough {code} were made.',
      piecesGood: 'The first thing that does not agree: how many pieces of dough {code} were good.',
      gone: 'The first thing that does not agree: dough {code} is gone.',
      added: 'The first thing that does not agree: dough {code} was added.',
    },
    changed: 'The first thing that does not agree: a reading of dough {code}, closed as {was}, now {is}.',
    gone: 'The first thing that does not agree: a reading of dough {code}, closed as {was}, is gone.',
    added: 'The first thing that does not agree: a reading of dough {code}, {is}, was added.',
    weighing: {
      'weighing-changed': 'The first thing that does not agree: what was weighed of {ingredient} for dough {code}.',
      'weighing-gone':
        'The first thing that does not agree: what was weighed of {ingredient} for dough {code} is gone.',
      'weighing-added':
        'The first thing that does not agree: what was weighed of {ingredient} for dough {code} was added.',
    },
    found: 'The first thing that does not agree: what was found later of dough {code}, or who signed it.',
    elsewhere: 'What differs is nothing that a result rests on.',
    damaged: 'What was sealed when the readings were closed cannot be read, or is not what was hashed then.',
    unknownFormat: 'What was sealed when the readings were closed was written by a later Evendough. Update this one.',
    todo: 'Only somebody with the database’s own password can have done that. Stop the app, keep the data folder as it is, and compare it with your last backup.',
    unsealed: 'Its readings were closed before Evendough sealed them: that nobody changed them since cannot be told.',
    term: 'Seal',
    sealed: '{seal}, over everything declared, baked and read',
  },
  /** What was found of a dough: by itself, with what a loaf of it costs more or less, and where other things differed too. */
  claims: {
    more: {
      plain: '{dough} gives {amount} more {measure}.',
      dearer: '{dough} gives {amount} more {measure} for {money} more a loaf.',
      cheaper: '{dough} gives {amount} more {measure} and costs {money} less a loaf.',
      sameCost: '{dough} gives {amount} more {measure} at the same cost a loaf.',
      doubted: '{dough} gives {amount} more {measure}, if it is the ingredient.',
    },
    less: {
      plain: '{dough} gives {amount} less {measure}.',
      dearer: '{dough} gives {amount} less {measure} for {money} more a loaf.',
      cheaper: '{dough} gives {amount} less {measure} and costs {money} less a loaf.',
      sameCost: '{dough} gives {amount} less {measure} at the same cost a loaf.',
      doubted: '{dough} gives {amount} less {measure}, if it is the ingredient.',
    },
    noWorthwhile: {
      plain: '{dough} makes no difference worth having in {measure}.',
      dearer: '{dough} makes no difference worth having in {measure} for {money} more a loaf.',
      cheaper: '{dough} makes no difference worth having in {measure} and costs {money} less a loaf.',
      sameCost: '{dough} makes no difference worth having in {measure} at the same cost a loaf.',
      doubted: '{dough} makes no difference worth having in {measure}, if it is the ingredient.',
    },
    noWorse: {
      plain: '{dough} is no worse in {measure}.',
      dearer: '{dough} is no worse in {measure} for {money} more a loaf.',
      cheaper: '{dough} is no worse in {measure} and costs {money} less a loaf.',
      sameCost: '{dough} is no worse in {measure} at the same cost a loaf.',
      doubted: '{dough} is no worse in {measure}, if it is the ingredient.',
    },
    same: {
      plain: '{dough} is the same in {measure}.',
      dearer: '{dough} is the same in {measure} for {money} more a loaf.',
      cheaper: '{dough} is the same in {measure} and costs {money} less a loaf.',
      sameCost: '{dough} is the same in {measure} at the same cost a loaf.',
      doubted: '{dough} is the same in {measure}, if it is the ingredient.',
    },
    undecided: { plain: '{dough} is undecided.', doubted: '{dough} is undecided, and other things differed too.' },
  },
  /** Where the limits lie, each case in a sentence that is true of it; of a measure with a good direction. */
  lies: {
    'gain-that-matters': 'Between {low} and {high}: better, and by the {margin} that was called worth having or more.',
    'gain-perhaps-matters':
      'Between {low} and {high}: better; whether by the {margin} that was called worth having is open.',
    'small-gain': 'Between {low} and {high}: better, but by less than the {margin} that was called worth having.',
    'within-margin': 'Between {low} and {high}: if there is any difference, it is less than {margin}.',
    'none-to-gain-that-matters':
      'Between {low} and {high}: no difference and a gain of {margin} or more are both still possible, a loss of that size is not.',
    'none-to-loss-that-matters':
      'Between {low} and {high}: no difference and a loss of {margin} or more are both still possible, a gain of that size is not.',
    anything:
      'Between {low} and {high}: a gain of {margin} or more, none, and a loss of that size are all still possible.',
    'small-loss': 'Between {low} and {high}: worse, but by less than matters, which was {margin}.',
    'loss-perhaps-matters': 'Between {low} and {high}: worse; whether by the {margin} that matters is open.',
    'loss-that-matters': 'Between {low} and {high}: worse, and by the {margin} that matters or more.',
  },
  /** The same of a measure without a good direction. */
  liesEitherWay: {
    'gain-that-matters': 'Between {low} and {high}: more, by {margin} or beyond.',
    'gain-perhaps-matters': 'Between {low} and {high}: more; whether by {margin} is open.',
    'small-gain': 'Between {low} and {high}: more, but by less than {margin}.',
    'within-margin': 'Between {low} and {high}: if there is any difference, it is less than {margin}.',
    'none-to-gain-that-matters':
      'Between {low} and {high}: no difference and {margin} more are both still possible, {margin} less is not.',
    'none-to-loss-that-matters':
      'Between {low} and {high}: no difference and {margin} less are both still possible, {margin} more is not.',
    anything: 'Between {low} and {high}: {margin} more, no difference, and {margin} less are all still possible.',
    'small-loss': 'Between {low} and {high}: less, but by less than {margin}.',
    'loss-perhaps-matters': 'Between {low} and {high}: less; whether by {margin} is open.',
    'loss-that-matters': 'Between {low} and {high}: less, by {margin} or beyond.',
  },
  byOwnDays: {
    pooledOnly:
      'By its own mixing days alone, {low} to {high}, that is not shown: the rest comes from how little the other doughs changed from day to day.',
    pooledOnlyNone:
      'By its own mixing days alone that is not shown: they are too few, or all alike, to say how much it changes from day to day.',
  },
  look: {
    one: 'From one dough against the control of the same day, without an interval and without a verdict.',
    other: 'From {count} doughs against the control of the same days, without an interval and without a verdict.',
  },
  verdicts: {
    better: 'better',
    'better-on-pooled-error-only': 'better on the pooled error only',
    worse: 'worse',
    'no-worthwhile-difference': 'no worthwhile difference',
    undecided: 'undecided',
    'no-worse': 'no worse',
    same: 'the same',
    different: 'different',
  },
  clearVerdicts: { better: 'clearly better', worse: 'clearly worse' },
  /** The same where other things than the ingredient differed as well. */
  doubtedVerdicts: {
    better: 'better, but other things differed too',
    'better-on-pooled-error-only': 'better on the pooled error only, and other things differed too',
    worse: 'worse, but other things differed too',
    'no-worthwhile-difference': 'no worthwhile difference, but other things differed too',
    undecided: 'undecided, but other things differed too',
    'no-worse': 'no worse, but other things differed too',
    same: 'the same, but other things differed too',
    different: 'different, but other things differed too',
  },
  doubtedClearVerdicts: {
    better: 'clearly better, but other things differed too',
    worse: 'clearly worse, but other things differed too',
  },
  /** The same where it was declared to be said of the days that are baked, and of no other. */
  onTheseDays: {
    verdicts: {
      better: 'better on these days',
      'better-on-pooled-error-only': 'better on the pooled error only, on these days',
      worse: 'worse on these days',
      'no-worthwhile-difference': 'no worthwhile difference on these days',
      undecided: 'undecided',
      'no-worse': 'no worse on these days',
      same: 'the same on these days',
      different: 'different on these days',
    },
    clearVerdicts: { better: 'clearly better on these days', worse: 'clearly worse on these days' },
    doubtedVerdicts: {
      better: 'better on these days, but other things differed too',
      'better-on-pooled-error-only': 'better on the pooled error only, on these days, and other things differed too',
      worse: 'worse on these days, but other things differed too',
      'no-worthwhile-difference': 'no worthwhile difference on these days, but other things differed too',
      undecided: 'undecided, but other things differed too',
      'no-worse': 'no worse on these days, but other things differed too',
      same: 'the same on these days, but other things differed too',
      different: 'different on these days, but other things differed too',
    },
    doubtedClearVerdicts: {
      better: 'clearly better on these days, but other things differed too',
      worse: 'clearly worse on these days, but other things differed too',
    },
    /** After what was found. */
    only: 'That is said of these mixing days only, and of no other.',
  },
  noVerdict: 'no verdict',
  lookOnly: 'look only',
  notBaked: 'not in',
  indicationWord: 'indication',

  picture: {
    title: '{measure} against the control, {unit}',
    note: {
      'two-sided':
        'Small marks are loaves against the control of their day, lines the doughs, bars {confidence} intervals for all test doughs at once.',
      'one-sided-pair':
        'Small marks are loaves against the control of their day, lines the doughs, bars have one limit each side at {confidence}, for all test doughs at once.',
    },
    noteLook: 'Small marks are loaves against the control of their day, lines the doughs.',
    noteHollow: 'Hollow: not to be trusted, see what else differed.',
    noteBand: 'Grey band: less than what was called worth having.',
    label: 'Differences from the control with their intervals. The same numbers are in the table below.',
    control: 'control',
  },

  numbers: 'The numbers',
  arm: 'Dough',
  doughs: 'Doughs',
  loaves: 'Loaves',
  mean: 'Mean, {unit}',
  difference: 'Difference, {unit}',
  differencePct: 'Difference, %',
  ownDays: 'Own days alone, {unit}',
  ownDaysCount: { one: 'one day', other: '{count} days' },
  p: 'p',
  verdict: 'Verdict',
  range: '{low} to {high}',

  levels: 'By {factor}',
  levelsTests: {
    arm: 'Kinds of dough: F({df1}, {df2}) = {f}, p {p}.',
    level: '{factor}: F({df1}, {df2}) = {f}, p {p}.',
    armByLevel: 'Whether the doughs differ in what {factor} does: F({df1}, {df2}) = {f}, p {p}.',
  },

  cost: 'What it costs and gives',
  costOnly: 'What it costs',
  costDay:
    'Ingredients only, at the prices of {day}; the latest of them holds from {from}. A loaf is one of the formula’s own weight, of the dough as it was planned, with its part of the dough that is lost; spoilt loaves are counted apart. A whole dough counts with the water that was taken, where every dough has that in the book. Water without a price costs nothing.',
  perLoaf: 'Per loaf',
  perGoodLoaf: 'Per good loaf',
  goodOf: '{pieces} of {planned}',
  byUnit: 'Ingredient cost by dough, loaf, {unit} and litre',
  perDough: 'Dough',
  byLoaf: 'One loaf',
  spoilt: 'Spoilt loaves',
  spoiltOf: '{count} of {of}',
  spoiltRange: '{low} to {high} %',
  spoiltNote:
    'Below each count of spoilt loaves: what share of them it may be in the long run, with {confidence} % confidence, as if each loaf were spoilt by itself. Loaves of one dough are not, so it may be more or less than that.',
  byMass: 'One {unit} of bread',
  byLitre: 'One litre of bread',
  notCounted: 'not counted',
  /** At which price of what a dough doses a litre of it costs as much as one of the control. */
  sameVolume: {
    title: 'When a litre costs as much as the control’s',
    note: 'By the price of what a dough doses, all other prices of the day as they are, and the volume of its loaves with {confidence} % confidence for all doughs at once.',
    upTo: '{dough}: a litre costs as much as the control’s with {ingredient} at {price} a {unit}, and less below that.',
    upToRange:
      '{dough}: a litre costs as much as the control’s with {ingredient} at a price from {low} to {high} a {unit}, and less below that.',
    upToUnsure:
      '{dough}: at best, a litre costs as much as the control’s with {ingredient} at {high} a {unit}. At worst it gains too little volume, so it is not sure that any price would do.',
    never: '{dough}: a litre costs more than the control’s at any price of {ingredient}, even as a gift.',
    from: '{dough}: a litre costs no more than the control’s once {ingredient} costs {price} a {unit} or more.',
    fromRange:
      '{dough}: a litre costs no more than the control’s once {ingredient} costs {low} to {high} a {unit} or more.',
    fromUnsure:
      '{dough}: at best, a litre costs no more than the control’s whatever {ingredient} costs; at worst only once it costs {price} a {unit} or more.',
    always: '{dough}: a litre costs no more than the control’s, whatever {ingredient} costs.',
    noBearing:
      '{dough}: a litre holds as much {ingredient} as one of the control, so no price of it makes them cost the same.',
    unclear:
      '{dough}: the volume is not sure enough to say at which price of {ingredient} a litre costs as much as the control’s.',
    volumeRange: 'In volume its loaves differ from the control’s by {low} to {high} %.',
    volumeOnly:
      'In volume its loaves differ from the control’s by {pct} %; how sure that is cannot be told, and so it is with the price.',
    notMeasured: '{dough}: the volume of its loaves was not measured, so there is no such price.',
    several: '{dough}: it doses several ingredients, so there is no single price of one.',
    notCosted: '{dough}: other prices are missing or are in several currencies, so there is no such price.',
  },
  gain: 'Gain, %',
  unpriced: '{dough}: no price on that day for {ingredients}, so there is no sum.',
  mixedCurrencies: 'The prices are in several currencies, so there is no sum.',
  toStores: 'Enter prices',

  else: 'What else differed',
  elseNone:
    'Nothing else was written down for these doughs: dough temperature, proof time, water. What they did to the loaves cannot be told.',
  elseRule:
    'Spoken of from {temp} of dough temperature, {proof} of the control’s proof time, or {water} of its water beyond the plan: common practice, no source.',
  elseEven: 'In what was written down, every dough differed from the control by less than that.',
  hydration: 'Water on flour, %',
  doughYield: 'Dough yield',
  asPlanned: 'planned {value}',
  mixedNote:
    'Water on flour is plain water, pre-ferments with it; dough yield is dough from 100 parts of flour. Both are of the water that was taken, where every dough has it in the book.',
  conditionUnit: '{measure}, {unit}',
  minutes: 'min',
  recorded: '{mean} ({recorded} of {doughs} doughs)',
  warnings: {
    'dough-temp': {
      more: '{dough} came out {amount} warmer than the control: this trial cannot tell that from the ingredient. Bake it again.',
      less: '{dough} came out {amount} cooler than the control: this trial cannot tell that from the ingredient. Bake it again.',
    },
    'proof-time': {
      more: '{dough} proofed {amount} longer than the control: this trial cannot tell that from the ingredient.',
      less: '{dough} proofed {amount} shorter than the control: this trial cannot tell that from the ingredient.',
    },
    'water-added': {
      more: '{dough} took {amount} more water than planned, measured by the control: this trial cannot tell that from the ingredient.',
      less: '{dough} took {amount} less water than planned, measured by the control: this trial cannot tell that from the ingredient.',
    },
  },

  withTakenOut: 'With dough {codes} counted',
  withTakenOutNote:
    'Taken out, by hand or by what was weighed, though what decides was read. All the rest of this page is without.',
  asLastWeighed: 'Going by what was weighed last for dough {codes}',
  asLastWeighedNote:
    'It was written when what decides had been read already, so it moves no dough. All the rest of this page goes by what stood before.',
  concluded: 'What this trial can and cannot say',
  limits: {
    'stopped-early':
      'It was stopped before it was whole. What it shows is an indication, and nothing is decided by it.',
    'fewer-days': '{counted} of {planned} planned mixing days count: an indication, not a verdict.',
    'one-day':
      'All doughs that count are from one mixing day. Nothing says how much the difference changes from day to day, so there is no interval and no verdict.',
    'no-control': 'There is no measured dough of the control, so nothing can be compared.',
    'one-batch-per-arm':
      'One dough of each says how these doughs came out, not what the ingredient does: a look only, no verdict.',
    'one-batch-in-control':
      'There is one measured dough of the control only. Nothing can be compared with it but by a look.',
    'one-batch-in-arm': '{dough} has one measured dough: a look only. The others are compared without it.',
    'arm-without-batches':
      '{dough} has no dough that counts, so nothing can be said of it. The others are compared without it.',
    'arm-on-one-day':
      'All doughs of {dough} that count are from one mixing day. It cannot be told from what else was special about that day.',
    'no-arms-left': 'No test dough was measured at least twice, so there is nothing to compare with the control.',
    'confounded-with-days': 'The kinds of dough cannot be told from the mixing days, so nothing can be compared.',
    'no-degrees':
      'There are too few doughs and mixing days to know how much the differences change. They are shown without intervals.',
    'zero-variance':
      'The differences are the very same on every mixing day. That happens with copied or coarse readings; no interval can be worked out.',
    'too-many-doughs': 'Too many doughs and mixing days for one comparison. The means are shown without intervals.',
    'unequal-loaves': 'Not every dough has the same number of loaves. Each dough counts the same.',
    'no-true-zero':
      'The measure has no true zero, so a difference in % of it says nothing. Nothing is compared; declare such a difference in its own unit.',
    'bad-dough-not-told':
      'One bad dough could not be told here: with so few doughs nothing says which of them would be the odd one.',
    'margin-unusable': 'The difference worth having is all of the control or more, so nothing can be judged by it.',
    'no-direction': 'The measure has no good direction, so there is no verdict.',
    'look-only-asked': 'A look only was asked for, so there is no verdict.',
    'levels-not-balanced':
      'Not every kind of dough has exactly one complete dough on every mixing day, so what the levels do is shown without tests.',
    'levels-one-day': 'With one mixing day what the levels do is shown without tests.',
    'not-computable': 'These readings cannot be brought into a comparison. The means are shown without intervals.',
  },

  batches: 'The doughs',
  batchesNote: 'Which dough a code stands for is told with the result.',
  day: 'Mixing day',
  dayDate: '{number}, {date}',
  order: 'Order',
  code: 'Code',
  stateOf: 'State',
  batchStates: {
    waiting: 'waiting',
    weighing: 'weighing',
    in_work: 'in work',
    baked: 'baked',
    measured: 'measured',
    lost: 'lost',
    set_aside: 'set aside',
    not_baked: 'not baked',
  },
  counts: 'Counts',
  countsYes: 'yes',
  uncounted: {
    lost: 'no: lost',
    'set-aside': 'no: set aside',
    'not-baked': 'no: not baked',
    open: 'no: not measured',
    'no-reading': 'no: its measure was not read',
    'level-missing': 'no: a level is missing',
    'day-without-control': 'no: no control that day',
    'day-without-others': 'no: the control alone that day',
    'out-of-its-arm': 'no: weighed otherwise than planned',
  },
  toRepair: {
    one: 'One mixing day is short of a dough. That can be put right until the readings are closed, and not after.',
    other:
      '{count} mixing days are short of a dough. That can be put right until the readings are closed, and not after.',
  },
  toRepairGo: 'Put it right',
  wentWrong: 'What went wrong',
  wentWrongNone: 'Nothing was reported, nothing is missing, and no value stands out.',
  oddDays: {
    spread:
      'The doughs of mixing day {day} were begun more than 12 hours apart, so they may not have had the same day.',
    together: 'Mixing days {day} and {other} were begun less than 12 hours apart, so they may have been one day.',
  },
  fromFile: {
    one: 'One reading came in from a file: nobody entered it here as it was taken.',
    other: '{count} readings came in from a file: nobody entered them here as they were taken.',
  },
  gaps: {
    'fewer-pieces': 'Dough {code}: {have} of {of} pieces made',
    missing: 'Dough {code}: {name}: {have} of {of} read',
    unsettled: 'Dough {code}: {name}, {place}: two readings disagree, and the third is not taken',
    outside: 'Dough {code}: {name}, {place}: {value}, outside what is usual, {least} to {most}',
    'to-settle': {
      one: 'Dough {code}: one entry came too late for its place; it is kept aside for the head baker to settle',
      other:
        'Dough {code}: {count} entries came too late for their places; they are kept aside for the head baker to settle',
    },
  },
  ended: {
    waiting: 'Dough {code}, waiting: {why}',
    weighing: 'Dough {code}, weighing: {why}',
    in_work: 'Dough {code}, in work: {why}',
    baked: 'Dough {code}, baked: {why}',
    measured: 'Dough {code}, measured: {why}',
    lost: 'Dough {code}, lost: {why}',
    set_aside: 'Dough {code}, set aside: {why}',
    not_baked: 'Dough {code}, not baked: {why}',
  },
  unwritten: {
    one: 'Of one measured dough it is not written what was weighed.',
    other: 'Of {count} measured doughs it is not written what was weighed.',
  },
  partlyWritten: {
    one: 'Of one measured dough it is not written of every line what was weighed.',
    other: 'Of {count} measured doughs it is not written of every line what was weighed.',
  },
  correctedWeighings: {
    one: 'One weighing was corrected; it stands below.',
    other: '{count} weighings were corrected; they stand below.',
  },
  linesOff: {
    one: 'One line was weighed otherwise than planned; it stands below.',
    other: '{count} lines were weighed otherwise than planned; they stand below.',
  },
  weighed: {
    title: 'Weighed otherwise than planned',
    note: 'A dose that is more than 5 % or one step of its scale off, and a line that was left out, take a dough out of the count, if it was written before what decides was read. Other lines more than 1 % or one step off are listed and change nothing. The project’s own rule.',
    dough: 'Dough',
    line: 'Line',
    planned: 'Planned',
    weighed: 'Weighed',
    who: 'Who, when',
    remark: 'What follows',
    none: 'nothing',
    ticked: 'as planned',
    out: 'takes it out',
    late: 'written after it was read: it counts',
    listed: 'listed only',
    corrections: 'Corrected weighings',
    correctionsNote: {
      one: 'One weighing was corrected before the readings were closed. What it said stays in the book.',
      other: '{count} weighings were corrected before the readings were closed. What they said stays in the book.',
    },
  },
  unfinished: 'Dough {code} was begun and never measured.',
  correctedCount: {
    one: 'One reading was corrected; it stands below.',
    other: '{count} readings were corrected; they stand below.',
  },
  correctedSoFar: {
    one: 'One reading was corrected.',
    other: '{count} readings were corrected.',
  },
  cause: 'Dough {code}: {what} (noted {at}, {who})',
  foundObjects: {
    ingredient_left: 'an ingredient that was left',
    tasted: 'the taste',
    stock_count: 'the stock',
    other: 'something else',
  },
  found: {
    unsigned:
      'Dough {code}: {what} (found later, {at}, {who}; shown by: {object}). Nobody else signed it, so it took nothing out.',
    signed: 'Dough {code}: {what} (found later, {at}, {who}; shown by: {object}; seen and signed by {signer})',
    alone: 'Dough {code}: {what} (found later, {at}, {who}; shown by: {object}; nobody else checked)',
  },
  lessFavourable:
    'Dough {codes} was set aside for what was found after it was read. This is the less favourable of the comparison without it and with it.',
  repairs: {
    bake_again: 'Dough {code} was baked again as dough {other} ({at}, {who}).',
    swap: 'Doughs {code} and {other} exchanged their places before they were begun: {why} ({at}, {who}).',
    add_day: 'Mixing day {day} was added, because mixing day {short} was short of a dough ({at}, {who}).',
  },
  furtherRepeats: 'Dough {code}: {name}, {place}: read {have} times, the plan asks for {of}',
  oddTimes: {
    'before-begun': {
      one: 'Dough {code}: the clock of one reading said a time before the dough was begun',
      other: 'Dough {code}: the clocks of {count} readings said a time before the dough was begun',
    },
    'in-the-future': {
      one: 'Dough {code}: the clock of one reading ran ahead',
      other: 'Dough {code}: the clocks of {count} readings ran ahead',
    },
  },
  corrections: 'Corrected readings',
  correctionsNote: {
    one: 'One reading was corrected before the readings were closed. What it said stays in the book.',
    other: '{count} readings were corrected before the readings were closed. What they said stays in the book.',
  },
  correctionDough: 'Dough',
  correctionOf: 'Reading',
  correctionPlace: '{name}, {place}',
  correctionBefore: 'Was',
  correctionAfter: 'Is',
  correctionWho: 'Who, when',
  correctionWhoAt: '{who}, {at}',
  correctionWhy: 'Why',
  correctionSlip: 'own slip, within ten minutes',
  correctionKnew: 'had opened the key before',
  correctionMoved: 'piece {piece}, reading {repeat}',
  correctionMovedBatch: 'reading {repeat}',
  knew: {
    title: 'Who knew which dough is which',
    note: 'From the keys that were opened here. What somebody saw or was told beside that is not known.',
    declaredNobody: 'The plan kept nobody from knowing.',
    declared: 'By the plan these were not to know which dough is which:',
    notKept: 'That was not kept to: readings were entered by somebody who had opened the key.',
    measures: {
      none: {
        one: '{measure}: one reading. Whoever entered it had not opened the key.',
        other: '{measure}: {count} readings. Nobody who entered them had opened the key.',
      },
      all: {
        one: '{measure}: one reading, entered by somebody who had opened the key.',
        other: '{measure}: {count} readings, all entered by somebody who had opened the key.',
      },
      some: {
        one: '{measure}: {knew} of one reading entered by somebody who had opened the key.',
        other: '{measure}: {knew} of {count} readings entered by somebody who had opened the key.',
      },
    },
    unknown: {
      one: 'For one of them nobody had opened the key here at all, so it is not kept who knew what was mixed.',
      other: 'For {count} of them nobody had opened the key here at all, so it is not kept who knew what was mixed.',
    },
    nobody: 'Nobody opened the key here before the readings were closed.',
    openedAll: '{name} opened the key of the trial',
    openedOne: '{name} opened the key of dough {code}',
    looked: {
      key: { one: '{name} looked at the key', other: '{name} looked at the key, on {count} days' },
      result: { one: '{name} looked at the result', other: '{name} looked at the result, on {count} days' },
      evidence: { one: '{name} looked at the evidence', other: '{name} looked at the evidence, on {count} days' },
    },
    lookers: 'Who looked, first',
  },
  outOfOrder: 'On mixing day {day} the doughs were begun in another order than the drawn one.',
  flags: {
    batch:
      'Dough {code} lies far from what its kind and its day lead one to expect (studentized residual, p {p}). It is kept in; look at how it was made.',
    oneOf:
      'One of the doughs {codes} lies far from what its kind and its day lead one to expect (studentized residual, p {p}); which one cannot be told. They are kept in; look at how they were made.',
    loaf: 'Loaf {piece} of dough {code} lies far from its fellows (Grubbs, p {p}). It is kept in; look at it again.',
  },

  method: 'How it was worked out',
  methodUnit: 'Repeats are averaged in a loaf, loaves in a dough, and a dough counts once, however many loaves it has.',
  methodUnits: {
    any_day:
      'The verdict goes by the mean of a kind of dough on a mixing day, because an effect may differ from day to day.',
    these_days:
      'Declared before baking: the verdict goes by doughs, as if an effect were the same on every day. It is said of these mixing days only.',
  },
  methodScales: {
    units:
      'The verdict rests on each kind of dough’s mean of a mixing day: a linear model of kind and day, weighted by the doughs kept, so that what a day does to all doughs falls out, and what it does to one kind counts as error. The % beside it is the ratio of the means by Fieller’s theorem, each by itself; nothing is decided by it.',
    'log-ratio':
      'The verdict rests on ratios: logarithms of the doughs, of each kind the mean of a mixing day, in a linear model of kind and day, weighted by the doughs kept. What a day does to all doughs falls out, what it does to one kind counts as error. The difference in {unit} beside it is that of the means; nothing is decided by it.',
  },
  methodOwn:
    'Beside it stands what each kind of dough shows by its own mixing days alone, each with equal weight (paired t, {confidence}). ‘Better’ asks that this lies clear of no difference too.',
  methodAdjustments: {
    'student-t': 'One test dough against the control: Student’s t.',
    'dunnett-product':
      'Several test doughs against one control: Dunnett’s adjustment, so that the intervals hold all at once.',
    'dunnett-lattice':
      'Several test doughs against one control: Dunnett’s adjustment with the model’s own correlation, so that the intervals hold all at once.',
  },
  methodLimits: {
    'two-sided': 'The intervals are two-sided at {confidence}.',
    'one-sided-pair': 'Each limit is one-sided at {confidence}, as the question asks for.',
  },
  methodFigures:
    'One dough differs from what its kind and its day lead one to expect by {sd} {unit} (standard deviation, {df} degrees of freedom).',
  methodP: {
    'two-sided': 'p is for no difference at all, adjusted for all test doughs.',
    'one-sided-pair': 'p is for a difference as large as the margin, adjusted for all test doughs.',
  },
  methodLoaves:
    'Loaves of one dough differ by {sd} {unit} (standard deviation, {df} degrees of freedom). It informs and decides nothing.',
  methodMargin:
    'The difference worth having is {margin}. In % it is a ratio: from 1 less that share to 1 and that share of the control.',
  methodMarginUnits: 'The difference worth having is {margin}.',
  methodRule:
    'Better: the whole interval is on the good side of the control, and the difference at least what was called worth having, by its own days alone too; clearly, when the whole interval is. Worse: the whole interval is on the bad side. No worthwhile difference: the whole interval is within it on both sides. Otherwise undecided.',

  progress: 'How far it is',
  done: 'Measured',
  lostCount: 'Lost, set aside or not baked',
  openCount: 'Still open',

  toPlan: 'The plan',

  close: 'Close the readings',
  closeNote: { one: 'One dough is still open.', other: '{count} doughs are still open.' },
  closeNoteNone:
    'Every dough is measured, lost, set aside or not baked. Once closed, the readings stand and everybody sees the comparison.',
  closeGaps:
    'These stay so once the trial is closed, and the result names them. Put them right in the shift, or say why you close all the same.',
  closeGapsReason: 'Why is it closed all the same?',
  closeGapsHint: 'It stands above the result, with what is missing below it.',
  closeAllTheSame: 'Close all the same',
  closeGo: 'Close the readings',
  closeEarly: 'Stop early',
  closeReason: 'Why',
  closeReasonHint: 'It stands above the result. A trial that is stopped early gives an indication and no verdict.',
} as const
