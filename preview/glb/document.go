package glb

import "drawerwright/preview/scene"

// document is the JSON of a file: sections 5.1 to 5.29 of the specification, of which these are
// the properties used.
type document struct {
	Asset       asset        `json:"asset"`
	Scene       int          `json:"scene"`
	Scenes      []root       `json:"scenes"`
	Nodes       []node       `json:"nodes"`
	Meshes      []mesh       `json:"meshes"`
	Materials   []material   `json:"materials"`
	Accessors   []accessor   `json:"accessors"`
	BufferViews []bufferView `json:"bufferViews"`
	Buffers     []buffer     `json:"buffers"`
}

type asset struct {
	Version   string `json:"version"`
	Generator string `json:"generator"`
}

type root struct {
	Name  string `json:"name"`
	Nodes []int  `json:"nodes"`
}

type node struct {
	Name     string       `json:"name"`
	Children []int        `json:"children,omitempty"`
	Mesh     *int         `json:"mesh,omitempty"`
	Matrix   *[16]float32 `json:"matrix"`
	Extras   any          `json:"extras"`
}

type boxExtras struct {
	Unit   string  `json:"unit"`
	Count  int     `json:"count"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	Depth  float64 `json:"depth"`
}

type partExtras struct {
	Unit     string `json:"unit"`
	Part     string `json:"part"`
	Role     string `json:"role"`
	Stock    string `json:"stock"`
	Quantity int    `json:"quantity"`
	scene.Numbers
}

type mesh struct {
	Name       string      `json:"name"`
	Primitives []primitive `json:"primitives"`
}

type primitive struct {
	Attributes attributes `json:"attributes"`
	Indices    int        `json:"indices"`
	Material   int        `json:"material"`
}

type attributes struct {
	Position int `json:"POSITION"`
	Normal   int `json:"NORMAL"`
}

type material struct {
	Name string `json:"name"`
	PBR  pbr    `json:"pbrMetallicRoughness"`
}

type pbr struct {
	Color     [4]float64 `json:"baseColorFactor"`
	Metallic  float64    `json:"metallicFactor"`
	Roughness float64    `json:"roughnessFactor"`
}

// Kinds of numbers and uses of views: sections 3.6.2.2 and 5.11.5.
const (
	typeUint16     = 5123
	typeUint32     = 5125
	typeFloat      = 5126
	vertexView     = 34962
	indexView      = 34963
	maxShortCorner = 0xFFFE // 0xFFFF would restart: section 3.7.2.1
)

type accessor struct {
	View   int         `json:"bufferView"`
	Offset int         `json:"byteOffset"`
	Kind   int         `json:"componentType"`
	Count  int         `json:"count"`
	Type   string      `json:"type"`
	Min    *[3]float32 `json:"min,omitempty"`
	Max    *[3]float32 `json:"max,omitempty"`
}

type bufferView struct {
	Buffer int `json:"buffer"`
	Offset int `json:"byteOffset"`
	Length int `json:"byteLength"`
	Stride int `json:"byteStride,omitempty"`
	Target int `json:"target"`
}

type buffer struct {
	Length int `json:"byteLength"`
}
