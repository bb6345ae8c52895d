/**
 * Reading what people write: files with their places, YAML values that know file and line,
 * quantities with units, the nearest known word, JSON Schemas, and the one way to say where and
 * what is wrong. Must not know parts, modules or logs.
 */
package straywire.format;
