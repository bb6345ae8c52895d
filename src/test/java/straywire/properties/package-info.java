/** What must hold of whole sittings, whatever the fault and the seed. */
package straywire.properties;
