/** What a person says at the bench in words of their own, and which entry it is. */
package straywire.saying;
