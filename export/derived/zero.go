package derived

import "reflect"

// unsigned takes the sign off every zero in a result: a product of a zero and something below it has one, and says nothing.
func unsigned(v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		if v.Float() == 0 && v.CanSet() {
			v.SetFloat(0)
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			unsigned(v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			unsigned(v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			unsigned(v.Index(i))
		}
	}
}
