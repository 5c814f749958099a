import { acidityWords } from './acidity'
import { analysisWords } from './analysis'
import { armsWords } from './arms'
import { colourWords } from './colour'
import { comparisonWords } from './comparison'
import { costWords } from './cost'
import { distributionsWords } from './distributions'
import { doseResponseWords } from './dose-response'
import { dosingWords } from './dosing'
import { fermentationWords } from './fermentation'
import { flourWords } from './flour'
import { formulaWords } from './formula'
import { labelWords } from './label'
import { loafWords } from './loaf'
import { mixedModelWords } from './mixed-model'
import { netWeightWords } from './net-weight'
import { panelWords } from './panel'
import { planWords } from './plan'
import { prefermentWords } from './preferment'
import { squaresWords } from './squares'
import { stalingWords } from './staling'
import { temperatureWords } from './temperature'
import { tinWords } from './tin'
import { weighingWords } from './weighing'

/** The calculations' own words, by subject: the name of the folder in lib/calc. A subject without words does not compile. */
export const calculations = {
  acidity: acidityWords,
  analysis: analysisWords,
  arms: armsWords,
  colour: colourWords,
  comparison: comparisonWords,
  cost: costWords,
  distributions: distributionsWords,
  'dose-response': doseResponseWords,
  dosing: dosingWords,
  fermentation: fermentationWords,
  flour: flourWords,
  formula: formulaWords,
  label: labelWords,
  loaf: loafWords,
  'mixed-model': mixedModelWords,
  'net-weight': netWeightWords,
  panel: panelWords,
  plan: planWords,
  preferment: prefermentWords,
  squares: squaresWords,
  staling: stalingWords,
  temperature: temperatureWords,
  tin: tinWords,
  weighing: weighingWords,
}
