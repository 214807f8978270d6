package golden
import ("testing";"math/rand/v2";"galewright/plan/pipeline";"fmt";"os";"runtime/debug";"regexp";"strings";"strconv")
func try(src string, f func()) (where string) {
 defer func(){ if r:=recover(); r!=nil { st:=string(debug.Stack()); re:=regexp.MustCompile(`/work/main/(\S+:\d+)`); m:=re.FindAllStringSubmatch(st,-1); for _,x:=range m { if !strings.Contains(x[1],"zz_test") { where+=x[1]+" "; if len(where)>150 {break} } }; where=fmt.Sprint(r)+" @ "+where } }()
 f(); return "" }
func TestZZ(t *testing.T){ n,_:=strconv.Atoi(os.Getenv("ZN")); s,_:=strconv.Atoi(os.Getenv("ZS")); r:=rand.New(rand.NewPCG(uint64(s),4)); ok:=0; codes:=map[string]int{}; pan:=map[string]int{}
 base,_:=os.ReadFile("../examples/"+os.Getenv("ZB")+".toml")
 for i:=range n { b:=make([]byte,60); for k:=range b { b[k]=byte(r.IntN(256)) }
  src:=madeUp(&choices{b}); if len(base)>0 { src=slipped(string(base),&choices{b}) }
  var res *pipeline.Result
  w:=try(src,func(){ r,ds:=pipeline.Run("plan.toml",[]byte(src),load); res=r
  if ds.Errors() { res=nil; for _,d:=range ds { if d.Severity==0 { codes[string(d.Code)]++; if codes[string(d.Code)]==1 { fmt.Println(i,d) ; os.WriteFile(fmt.Sprintf("/tmp/gw/made-%s.toml",d.Code),[]byte(src),0o644)} } } ; return}
  ok++ ; r.Loads() })
  if w=="" && res!=nil { w=try(src,func(){ t.Run(fmt.Sprint("d",i),func(t *testing.T){ defer func(){ if t.Failed() { os.WriteFile(fmt.Sprintf("/tmp/gw/madefail-%d.toml",i),[]byte(src),0o644) } }(); w=try(src,func(){ wholeWay(t,src) }) }) }) }
  if w!="" { pan[w]++; if pan[w]==1 { os.WriteFile(fmt.Sprintf("/tmp/gw/madepanic-%d.toml",i),[]byte(src),0o644); fmt.Println("PANIC",i,w) } } }
 fmt.Println(ok,codes); for k,v:=range pan { fmt.Println("P",v,k)} }
