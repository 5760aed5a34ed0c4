import { analyteNamed } from '#core/client/labs/analyteNames.ts';
import { readWrittenDay } from '#core/quantity/writtenDay.ts';

/** What a column of results holds, by the headings that laboratories print (common practice, no source), each without blanks and marks. */
const meanings = {
  analyte:
    'analyte test testname testdescription component componentname lab labtest labname procedure resultname observation parameter exam item',
  loinc: 'loinc loinccode testcode loincnum',
  value: 'value result results resultvalue numericresult numericvalue observationvalue testresult reading resultvalue finding',
  unit: 'unit units uom unitofmeasure unitsofmeasure resultunit resultunits',
  date: 'date day collected collectiondate collecteddate collectedon datecollected dateofcollection drawdate datedrawn drawnon specimendate sampledate dateofsample samplingdate takenon datetime collectiondatetime collecteddatetime collectiontimestamp datetimecollected observationdate observationdatetime servicedate dateofservice testdate labdate',
  reported: 'resultdate dateresulted resulted reported reporteddate datereported resultdatetime resulteddate finalized',
  time: 'time collectiontime collectedtime timecollected drawtime timedrawn sampletime',
  range:
    'range referencerange refrange reference referenceinterval refinterval normalrange normal normals expectedrange biologicalreferenceinterval',
  lowerNormal: 'lowernormal low lownormal normallow reflow referencelow rangelow lowerlimit referencerangelow lowerrange',
  upperNormal: 'uppernormal high highnormal normalhigh refhigh referencehigh rangehigh upperlimit referencerangehigh upperrange',
  drawn: 'drawn timing prepost predrawn',
  hemolyzed: 'hemolyzed haemolysed hemolysis',
  remark: 'comment comments note notes remark remarks resultcomment specimencomment',
  status: 'status resultstatus observationstatus',
  specimen: 'specimen specimentype sampletype source specimensource material',
  person:
    'patient patientname patientid client clientname mrn medicalrecordnumber subject patientmrn chartnumber person lastname firstname',
  born: 'dob dateofbirth birthdate born patientdob birthday',
  other:
    'flag flags abnormal abnormalflag hl interpretation accession accessionnumber order orderid ordernumber orderdate datereceived received receiveddate orderingprovider provider orderedby physician performinglab performingsite site location encounter visit method panel ordername category sex gender age',
} as const;

export type LabColumn = keyof typeof meanings;

const byHeading: ReadonlyMap<string, LabColumn> = new Map(
  (Object.keys(meanings) as LabColumn[])
    .reverse()
    .flatMap(column => meanings[column].split(' ').map((heading): [string, LabColumn] => [heading, column])),
);

/** What one column of a table is: what its heading says, an analyte as it is named with its unit, or a day on which everything below was taken. */
export type Column =
  | { readonly kind: 'meaning'; readonly means: LabColumn }
  | { readonly kind: 'analyte'; readonly name: string; readonly unit: string }
  | { readonly kind: 'day'; readonly words: string }
  | { readonly kind: 'unknown' };

/** "Result value", "K (mEq/L)", "Phosphorus, mg/dL", "11/03/2026". */
export function columnOf(heading: string): Column {
  const means = byHeading.get(bareHeading(heading));
  if (means !== undefined) return { kind: 'meaning', means };
  if (readWrittenDay(heading, 'month-first') !== undefined) return { kind: 'day', words: heading };
  if (analyteNamed(heading) !== undefined) return { kind: 'analyte', name: heading, unit: '' };
  const withUnit = /^(.+?)\s*(?:[([]\s*([^()[\]]*(?:\([^()]*\))?)\s*[)\]]|,\s*(\S+))$/u.exec(heading.trim());
  const [, name = '', inside, behind = ''] = withUnit ?? [];
  return analyteNamed(name) === undefined ? { kind: 'unknown' } : { kind: 'analyte', name, unit: inside ?? behind };
}

function bareHeading(words: string): string {
  return words.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}
