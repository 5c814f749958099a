import { analysisWords } from './analysis'
import { armsWords } from './arms'
import { colourWords } from './colour'
import { comparisonWords } from './comparison'
import { costWords } from './cost'
import { distributionsWords } from './distributions'
import { doseResponseWords } from './dose-response'
import { dosingWords } from './dosing'
import { fermentationWords } from './fermentation'
import { formulaWords } from './formula'
import { labelWords } from './label'
import { loafWords } from './loaf'
import { mixedModelWords } from './mixed-model'
import { netWeightWords } from './net-weight'
import { panelWords } from './panel'
import { planWords } from './plan'
import { squaresWords } from './squares'
import { stalingWords } from './staling'
import { temperatureWords } from './temperature'
import { weighingWords } from './weighing'

/** The calculations' own words, by subject: the name of the folder in lib/calc. A subject without words does not compile. */
export const calculations = {
  analysis: analysisWords,
  arms: armsWords,
  colour: colourWords,
  comparison: comparisonWords,
  cost: costWords,
  distributions: distributionsWords,
  'dose-response': doseResponseWords,
  dosing: dosingWords,
  fermentation: fermentationWords,
  formula: formulaWords,
  label: labelWords,
  loaf: loafWords,
  'mixed-model': mixedModelWords,
  'net-weight': netWeightWords,
  panel: panelWords,
  plan: planWords,
  squares: squaresWords,
  staling: stalingWords,
  temperature: temperatureWords,
  weighing: weighingWords,
}
