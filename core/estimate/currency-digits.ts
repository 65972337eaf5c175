/** Active currencies of ISO 4217 (list one). Funds codes, metals and testing codes are left out. */
const ACTIVE =
  'AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VED VES VND VUV WST XAF XCD XOF XPF YER ZAR ZMW ZWG';
const NO_DIGITS = 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF';
const THREE_DIGITS = 'BHD IQD JOD KWD LYD OMR TND';

const active = new Set(ACTIVE.split(' '));
const none = new Set(NO_DIGITS.split(' '));
const three = new Set(THREE_DIGITS.split(' '));

export const CURRENCIES: readonly string[] = [...active];

/** Digits of the minor unit: 0, 2 or 3; undefined for a code that is no active currency. */
export const currencyDigits = (code: string): number | undefined =>
  active.has(code) ? (none.has(code) ? 0 : three.has(code) ? 3 : 2) : undefined;
