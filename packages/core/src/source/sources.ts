import { antoniRandall2003 } from './antoni-randall-2003.ts';
import { api617 } from './api-617.ts';
import { api670 } from './api-670.ts';
import { barrierPractice } from './barrier-practice.ts';
import { beamTextbook } from './beam-textbook.ts';
import { bearingExercise } from './bearing-exercise.ts';
import { bearingWebCalculator } from './bearing-web-calculator.ts';
import { beltPractice } from './belt-practice.ts';
import { broch1984 } from './broch-1984.ts';
import { chargeAmplifier } from './charge-amplifier.ts';
import { chargeNoise2024 } from './charge-noise-2024.ts';
import { clopperPearson1934 } from './clopper-pearson-1934.ts';
import { conversionNotes } from './conversion-notes.ts';
import { curtinBearingData } from './curtin-bearing-data.ts';
import { cwruBearingData } from './cwru-bearing-data.ts';
import { dAntonaFerrero2006 } from './d-antona-ferrero-2006.ts';
import { dunkerley } from './dunkerley.ts';
import { fluidFilmPractice } from './fluid-film-practice.ts';
import { gearFrequencies } from './gear-frequencies.ts';
import { gearTrainingNotes } from './gear-training-notes.ts';
import { gearboxSignalTutorial } from './gearbox-signal-tutorial.ts';
import { harris1978 } from './harris-1978.ts';
import { heinzel2002 } from './heinzel-2002.ts';
import { helicopterGearbox } from './helicopter-gearbox.ts';
import { hydraulicTurbinePractice } from './hydraulic-turbine-practice.ts';
import { iec60079x0 } from './iec-60079-0.ts';
import { iec60079x11 } from './iec-60079-11.ts';
import { iec60079x14 } from './iec-60079-14.ts';
import { iec60079x25 } from './iec-60079-25.ts';
import { iec60529 } from './iec-60529.ts';
import { ieee1451x4 } from './ieee-1451-4.ts';
import { iepePractice } from './iepe-practice.ts';
import { inductionMotorPractice } from './induction-motor-practice.ts';
import { iso1683 } from './iso-1683.ts';
import { iso2041 } from './iso-2041.ts';
import { iso5348 } from './iso-5348.ts';
import { iso7919x3 } from './iso-7919-3.ts';
import { iso10816x1edition1995 } from './iso-10816-1-1995.ts';
import { iso10816x3edition2009 } from './iso-10816-3-2009.ts';
import { iso10816x7edition2009 } from './iso-10816-7-2009.ts';
import { iso13373x1 } from './iso-13373-1.ts';
import { iso20816x1 } from './iso-20816-1.ts';
import { iso20816x3edition2022 } from './iso-20816-3-2022.ts';
import { iso20816x8edition2018 } from './iso-20816-8-2018.ts';
import { iso80000x3 } from './iso-80000-3.ts';
import { jcgm100 } from './jcgm-100.ts';
import { jcgm101 } from './jcgm-101.ts';
import { jcgm102 } from './jcgm-102.ts';
import { leakTesting } from './leak-testing.ts';
import { loopPractice } from './loop-practice.ts';
import { mcFaddenSmith1984 } from './mcfadden-smith-1984.ts';
import { mfptBearingData } from './mfpt-bearing-data.ts';
import { namurNe43 } from './namur-ne-43.ts';
import { nrelGearbox } from './nrel-gearbox.ts';
import { numericalPackageNotes } from './numerical-package-notes.ts';
import { nuttall1981 } from './nuttall-1981.ts';
import { oscilloscopeWindowTable } from './oscilloscope-window-table.ts';
import { phm2012Bearing } from './phm-2012-bearing.ts';
import { planetaryKinematics } from './planetary-kinematics.ts';
import { planetaryPhasing } from './planetary-phasing.ts';
import { reciprocatingPractice } from './reciprocating-practice.ts';
import { rollingBearingKinematics } from './rolling-bearing-kinematics.ts';
import { samplingPractice } from './sampling-practice.ts';
import { screeningRules } from './screening-rules.ts';
import { seismometryNotes } from './seismometry-notes.ts';
import { sienaChargeNotes } from './siena-charge-notes.ts';
import { signalLibraryReference } from './signal-library-reference.ts';
import { singleDegreeOfFreedom } from './single-degree-of-freedom.ts';
import type { Source } from './source.ts';
import { statics } from './statics.ts';
import { symmetricWindowTable } from './symmetric-window-table.ts';
import { tedsModalLibrary } from './teds-modal-library.ts';
import { tedsTestStreams } from './teds-test-streams.ts';
import { temperatureClassTable } from './temperature-class-table.ts';
import { thermalNoise } from './thermal-noise.ts';
import { tradePractice } from './trade-practice.ts';

/** Every source the house cites. */
export const sources: readonly Source[] = [
  jcgm100,
  jcgm101,
  jcgm102,
  rollingBearingKinematics,
  mcFaddenSmith1984,
  clopperPearson1934,
  antoniRandall2003,
  cwruBearingData,
  curtinBearingData,
  mfptBearingData,
  phm2012Bearing,
  numericalPackageNotes,
  gearboxSignalTutorial,
  bearingWebCalculator,
  bearingExercise,
  gearTrainingNotes,
  nrelGearbox,
  helicopterGearbox,
  gearFrequencies,
  planetaryKinematics,
  planetaryPhasing,
  reciprocatingPractice,
  hydraulicTurbinePractice,
  inductionMotorPractice,
  beltPractice,
  fluidFilmPractice,
  iso1683,
  conversionNotes,
  iso80000x3,
  iso2041,
  iso5348,
  singleDegreeOfFreedom,
  dunkerley,
  iepePractice,
  namurNe43,
  loopPractice,
  iso20816x1,
  iso7919x3,
  iso10816x3edition2009,
  iso20816x3edition2022,
  iso10816x7edition2009,
  iso10816x1edition1995,
  iso20816x8edition2018,
  harris1978,
  nuttall1981,
  heinzel2002,
  dAntonaFerrero2006,
  oscilloscopeWindowTable,
  signalLibraryReference,
  symmetricWindowTable,
  samplingPractice,
  screeningRules,
  tradePractice,
  broch1984,
  seismometryNotes,
  api670,
  api617,
  chargeAmplifier,
  chargeNoise2024,
  iec60529,
  leakTesting,
  sienaChargeNotes,
  thermalNoise,
  barrierPractice,
  iec60079x0,
  iec60079x11,
  iec60079x14,
  iec60079x25,
  temperatureClassTable,
  beamTextbook,
  statics,
  iso13373x1,
  ieee1451x4,
  tedsTestStreams,
  tedsModalLibrary,
];
