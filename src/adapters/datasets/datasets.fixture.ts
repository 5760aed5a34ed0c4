import type { DatasetFile } from '#app/ports.ts';

/** A file that lies in memory, in chunks so small that lines and letters are cut. */
export function fileOf(name: string, content: string | Uint8Array, chunkBytes = 7): DatasetFile {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  return {
    name,
    bytes: bytes.length,
    async *open() {
      for (let at = 0; at < bytes.length; at += chunkBytes) yield bytes.subarray(at, at + chunkBytes);
    },
  };
}

/**
 * Rows of SR28 (figures of the open data file by number) in the layout of its ASCII release: FOOD_DES has 14 fields,
 * NUT_DATA 18, WEIGHT 7; an empty text is "~~" or nothing at all, as releases differ. Carp has no line for sugars; cheddar's fiber is an empty field.
 */
export const foodDes = `~01009~^~0100~^~Cheese, cheddar~^~CHEESE,CHEDDAR~^~~^~~^~Y~^~~^0^~~^6.38^4.27^8.79^3.87
~03068~^~0300~^~Babyfood, dinner, chicken noodle, strained~^~BABYFOOD,DINNER,CHICK NOODLE,STR~^~~^~~^~~^~~^0^~~^6.25^^^
~11090~^~1100~^~Broccoli, raw~^~BROCCOLI,RAW~^~~^~~^~Y~^~Leaves and tough stalks with trimmings~^39^~Brassica oleracea var. italica~^6.25^2.44^8.37^3.57
~11241~^~1100~^~Kohlrabi, raw~^~KOHLRABI,RAW~^^^^^54^^6.25^2.44^8.37^3.57
~11242~^~1100~^~Kohlrabi, cooked, boiled, drained, without salt~^~KOHLRABI,CKD,BLD,DRND,WO/SALT~^~~^~~^~~^~~^0^~~^6.25^^^
~15008~^~1500~^~Fish, carp, raw~^~CARP,RAW~^~~^~~^~~^~~^46^~~^6.25^^^
`;
export const nutData = `~01009~^~203~^24.04^3^0.1^~1~^~A~^~~^~~^1^^^^^^~~^12/2006^
~01009~^~291~^^0^^~4~^~BFZN~^~~^~~^^^^^^^~~^03/2015^
~01009~^~305~^473^3^0.1^~1~^~A~^~~^~~^1^^^^^^~~^12/2006^
~01009~^~306~^76^3^0.1^~1~^~A~^~~^~~^1^^^^^^~~^12/2006^
~03068~^~305~^46^1^^~1~^~~^~~^~~^^^^^^^~~^08/1991^
~11090~^~255~^89.30^7^0.1^~1~^~A~^~~^~~^1^^^^^^~~^12/2006^
~11090~^~305~^66^7^0.1^~1~^~A~^~~^~~^1^^^^^^~~^12/2006^
~11090~^~306~^316^7^0.1^~1~^~A~^~~^~~^1^^^^^^~~^12/2006^
~11090~^~401~^89.2^7^0.1^~1~^~A~^~~^~~^1^^^^^^~~^12/2006^
~11241~^~305~^46^1^^~1~^~~^~~^~~^^^^^^^~~^08/1984^
~11241~^~306~^350^1^^~1~^^^^^^^^^^^^08/1984^
~11242~^~305~^45^1^^~1~^~~^~~^~~^^^^^^^~~^08/1984^
~15008~^~203~^17.83^1^^~1~^~~^~~^~~^^^^^^^~~^08/1987^
~15008~^~305~^415^1^^~1~^~~^~~^~~^^^^^^^~~^08/1987^
~15008~^~306~^333^1^^~1~^~~^~~^~~^^^^^^^~~^08/1987^
`;
export const weight = `~01009~^1^1^~cup, diced~^132^^
~11090~^1^1^~cup chopped~^91^^
~15008~^1^3^~oz~^85^^
`;

export function sr28Files(changed: Partial<Record<'FOOD_DES.txt' | 'NUT_DATA.txt' | 'WEIGHT.txt', string>> = {}): DatasetFile[] {
  const texts = { 'FOOD_DES.txt': foodDes, 'NUT_DATA.txt': nutData, 'WEIGHT.txt': weight, ...changed };
  return Object.entries(texts).map(([name, text]) => fileOf(name, text));
}

/**
 * The same figures in the layout of FoodData Central's CSV downloads. The ids of foods are made up; nutrient ids, units and
 * headings are those of the downloads.
 */
export const fdcTexts = {
  'food.csv': `"fdc_id","data_type","description","food_category_id","publication_date"
"101","sr_legacy_food","Kohlrabi, raw","11","2019-04-01"
"102","foundation_food","Broccoli, raw","11","2024-04-18"
"103","sub_sample_food","Broccoli, raw","11","2024-04-18"
"104","branded_food","BROCCOLI","","2020-11-13"
`,
  'food_category.csv': `"id","code","description"
"11","1100","Vegetables and Vegetable Products"
`,
  'nutrient.csv': `"id","name","unit_name","nutrient_nbr","rank"
"1008","Energy","KCAL","208","300.0"
"1091","Phosphorus, P","MG","305","5600.0"
"1092","Potassium, K","MG","306","5700.0"
"2047","Energy (Atwater General Factors)","KCAL","957","280.0"
"2048","Energy (Atwater Specific Factors)","KCAL","958","290.0"
`,
  'food_nutrient.csv': `"id","fdc_id","nutrient_id","amount","data_points","derivation_id","min","max","median","footnote","min_year_acquired"
"1","101","1008","27.0","0","49","","","","",""
"2","101","1091","46.0","1","1","","","","",""
"3","101","1092","350.0","1","1","","","","",""
"4","102","2047","39.0","","49","","","","",""
"5","102","2048","32.0","","49","","","","a ""quoted"" note
on two lines",""
"6","102","1091","66.0","7","1","","","","",""
"7","103","1091","999.0","1","1","","","","",""
"8","104","1092","999.0","1","1","","","","",""
`,
  'food_portion.csv': `"id","fdc_id","seq_num","amount","measure_unit_id","portion_description","modifier","gram_weight","data_points","footnote","min_year_acquired"
"1","101","1","1.0","9999","","cup","135.0","","",""
"2","102","1","1.0","1000","","chopped","91.0","","",""
`,
  'measure_unit.csv': `"id","name"
"1000","cup"
"9999","undetermined"
`,
  'sr_legacy_food.csv': `"fdc_id","NDB_number"
"101","11241"
`,
} as const;

export function fdcFiles(changed: Readonly<Record<string, string>> = {}): DatasetFile[] {
  return Object.entries({ ...fdcTexts, ...changed }).map(([name, text]) => fileOf(name, text));
}
