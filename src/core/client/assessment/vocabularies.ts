import { type KeyOf, vocabulary } from '../vocabulary.ts';

// What an assessment may say, list by list. The schema, the form, the note and the rules take their keys and words from here.

export const conditions = vocabulary(
  [
    'edema',
    'ascites',
    'nephrotic-syndrome',
    'overload',
    'hypertension',
    'hypotension',
    'heart-failure',
    'salt-losing-kidney-disease',
    'ileostomy',
    'calcium-oxalate-stones',
    'frail',
    'sarcopenia',
    'acute-illness',
    'critically-ill',
    'alcohol-misuse',
    'metabolically-unstable',
    'peritonitis',
    'in-hospital',
    'new-feeding',
    'fasting-for-faith',
    'low-carbohydrate-diet',
    'gout',
    'bariatric-surgery',
    'gastroparesis',
    'swallowing-difficulty',
    'vegetarian-eating',
    'vegan-eating',
    'short-of-food',
  ],
  {
    'salt-losing-kidney-disease': 'salt-wasting kidney disease',
    'bariatric-surgery': 'bariatric surgery, also years ago',
    'swallowing-difficulty': 'swallowing difficulty (dysphagia)',
    'short-of-food': 'short of food or of money for it',
  },
);
export type Condition = KeyOf<typeof conditions>;

/** Medicines by class: no drug is named, and no change of one is ever proposed. */
export const medicines = vocabulary(
  [
    'raas-inhibitor',
    'mineralocorticoid-antagonist',
    'potassium-sparing-diuretic',
    'tacrolimus',
    'ciclosporin',
    'sirolimus-or-everolimus',
    'other-immunosuppressant',
    'high-dose-steroid',
    'vitamin-k-antagonist',
    'digoxin',
    'trimethoprim',
    'heparin',
    'nsaid',
    'non-selective-beta-blocker',
    'phosphate-binder',
    'active-vitamin-d',
    'calcimimetic',
    'ketoanalogs',
    'sglt2-inhibitor',
    'insulin-or-sulfonylurea',
    'insulin',
    'diuretic',
    'chemotherapy',
    'potassium-salt',
    'loop-diuretic',
    'thiazide-diuretic',
    'statin',
  ],
  {
    'raas-inhibitor': 'RAAS inhibitor',
    ciclosporin: 'cyclosporine',
    'vitamin-k-antagonist': 'vitamin K antagonist',
    nsaid: 'NSAID',
    'non-selective-beta-blocker': 'nonselective beta-blocker',
    'active-vitamin-d': 'active vitamin D',
    'sglt2-inhibitor': 'SGLT2 inhibitor',
  },
);
export type MedicineClass = KeyOf<typeof medicines>;

export const supplements = vocabulary(
  [
    'herbal',
    'salt-substitute',
    'high-dose-vitamin-c',
    'vitamin-a',
    'vitamin-k',
    'magnesium-or-aluminum-antacid',
    'creatine',
    'sports-or-slimming-product',
    'protein-powder',
    'calcium',
  ],
  { 'high-dose-vitamin-c': 'high-dose vitamin C', 'vitamin-a': 'vitamin A', 'vitamin-k': 'vitamin K' },
);
export type SupplementClass = KeyOf<typeof supplements>;

/** Phosphate binders by what is in them; no product is named. */
export const binders = vocabulary([
  'calcium-carbonate',
  'calcium-acetate',
  'magnesium-carbonate',
  'sevelamer',
  'lanthanum',
  'sucroferric-oxyhydroxide',
  'ferric-citrate',
  'aluminum-hydroxide',
  'other',
]);
export type BinderName = KeyOf<typeof binders>;

/** When binders are taken. */
export const mealTimes = vocabulary(['breakfast', 'lunch', 'dinner', 'snack'], { snack: 'a snack' });

export const potassiumBinders = vocabulary(['patiromer', 'sodium-zirconium-cyclosilicate', 'sodium-polystyrene-sulfonate']);
export type PotassiumBinderName = KeyOf<typeof potassiumBinders>;

/** What is eaten, drunk or fed beside ordinary meals. */
export const addedFoods = vocabulary(['oral-supplement', 'protein-powder', 'tube-feeding', 'meal-on-dialysis', 'other']);
export type AddedFood = KeyOf<typeof addedFoods>;

export const symptoms = vocabulary(
  [
    'palpitations',
    'weakness',
    'ecg-change',
    'swelling',
    'breathlessness',
    'missed-or-shortened-session',
    'ketones',
    'cloudy-drain',
    'abdominal-pain',
    'fever',
    'vomiting',
    'diarrhea',
    'missed-doses',
    'constipation',
  ],
  { 'ecg-change': 'ECG change' },
);
export type Symptom = KeyOf<typeof symptoms>;

/** What a weight is. Dry weight is the prescribed target after dialysis; `standard` is the NHANES II median that the dietitian looks up. */
export const weightKinds = vocabulary([
  'actual',
  'dry',
  'estimated-dry',
  'before-dialysis',
  'after-dialysis',
  'after-drain',
  'usual',
  'before-admission',
  'goal',
  'standard',
]);
export type WeightKind = KeyOf<typeof weightKinds>;

/** When a sample was drawn, on hemodialysis. */
export const drawnTimes = vocabulary(['before-dialysis', 'after-dialysis']);
export type DrawnTime = KeyOf<typeof drawnTimes>;

export const dialysisPlaces = vocabulary(['in-center', 'home']);
export const peritonealMethods = vocabulary(['capd', 'apd'], { capd: 'CAPD', apd: 'APD' });
export const appetites = vocabulary(['good', 'fair', 'poor']);
/** Whether a loss of weight was wanted, or fluid. */
export const lossCauses = vocabulary(['unintended', 'wanted', 'fluid']);
