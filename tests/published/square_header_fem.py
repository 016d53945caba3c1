import numpy as np, scipy.sparse as sp, scipy.sparse.linalg as sl
# Growth of a long square header with closed ends: generalised plane strain, finite elements with eight nodes on a
# quarter of the section, sharp corners inside and outside. Made to check core/vessel/square_header.cc; it shares
# nothing with it. Run: python3 square_header_fem.py (numpy, scipy)
def run(w,h,t,nu=.3,n=6):
    a,b=w/2,h/2
    # blocks: top wall: x 0..a, y b..b+t ; corner a..a+t,b..b+t ; side a..a+t, 0..b
    nx=max(4,int(round(a/t*n/1.5))); ny=max(4,int(round(b/t*n/1.5)))
    gr=lambda lo,hi,m: lo+(hi-lo)*(1-(1-np.linspace(0,1,m+1))**1.6)
    xs=np.concatenate([gr(0,a,nx),a+t*np.linspace(0,1,n+1)[1:]**1.3]); ys=np.concatenate([gr(0,b,ny),b+t*np.linspace(0,1,n+1)[1:]**1.3])
    nodes={};P=[]
    def nid(x,y):
        k=(round(x,9),round(y,9))
        if k not in nodes: nodes[k]=len(P);P.append((x,y))
        return nodes[k]
    els=[];edges=[]
    for i in range(len(xs)-1):
        for j in range(len(ys)-1):
            if i<nx and j<ny: continue
            x0,x1,y0,y1=xs[i],xs[i+1],ys[j],ys[j+1];xm,ym=(x0+x1)/2,(y0+y1)/2
            els.append([nid(*q) for q in ((x0,y0),(x1,y0),(x1,y1),(x0,y1),(xm,y0),(x1,ym),(xm,y1),(x0,ym))])
            if i<nx and j==ny: edges.append(([nid(x0,y0),nid(xm,y0),nid(x1,y0)],(0,1),x1-x0))
            if j<ny and i==nx: edges.append(([nid(x0,y0),nid(x0,ym),nid(x0,y1)],(1,0),y1-y0))
    P=np.array(P);N=len(P)
    D=1/((1+nu)*(1-2*nu))*np.array([[1-nu,nu,0],[nu,1-nu,0],[0,0,(1-2*nu)/2]])
    g=[-np.sqrt(.6),0,np.sqrt(.6)];wg=[5/9,8/9,5/9]
    I=[];J=[];V=[];kz=np.zeros(2*N);kzz=0.;lam=nu/((1+nu)*(1-2*nu));c33=(1-nu)/((1+nu)*(1-2*nu))
    for e in els:
        X=P[e];K=np.zeros((16,16));idx=np.array([[2*k,2*k+1] for k in e]).ravel()
        for xi,wi in zip(g,wg):
            for et,wj in zip(g,wg):
                c=[(-1,-1),(1,-1),(1,1),(-1,1)];dN=np.zeros((2,8))
                for k,(p,q) in enumerate(c):
                    dN[0,k]=.25*p*(1+q*et)*(2*p*xi+q*et); dN[1,k]=.25*q*(1+p*xi)*(p*xi+2*q*et)
                dN[:,4]=[-xi*(1-et),-.5*(1-xi**2)];dN[:,6]=[-xi*(1+et),.5*(1-xi**2)]
                dN[:,5]=[.5*(1-et**2),-et*(1+xi)];dN[:,7]=[-.5*(1-et**2),-et*(1-xi)]
                Jm=dN@X;d=np.linalg.solve(Jm,dN);B=np.zeros((3,16));B[0,0::2]=d[0];B[1,1::2]=d[1];B[2,0::2]=d[1];B[2,1::2]=d[0]
                dA=np.linalg.det(Jm)*wi*wj;K+=B.T@D@B*dA;kz[idx]+=lam*(B[0]+B[1])*dA;kzz+=c33*dA
        I+=list(np.repeat(idx,16));J+=list(np.tile(idx,16));V+=list(K.ravel())
    K=sp.csr_matrix((V,(I,J)),shape=(2*N+1,2*N+1)).tolil();K[:2*N,2*N]=kz[:,None];K[2*N,:2*N]=kz;K[2*N,2*N]=kzz;K=K.tocsr();f=np.zeros(2*N+1);f[2*N]=w*h/4
    for nd,(ax,ay),l in edges:
        for k,wt in zip(nd,(1/6,4/6,1/6)): f[2*k]+=ax*wt*l;f[2*k+1]+=ay*wt*l
    fix=[2*k for k in range(N) if abs(P[k,0])<1e-9]+[2*k+1 for k in range(N) if abs(P[k,1])<1e-9]
    free=np.setdiff1d(np.arange(2*N+1),fix);u=np.zeros(2*N+1);u[free]=sl.spsolve(K[free][:,free].tocsc(),f[free])
    return 4*f@u   # work of the pressure: growth of volume for each unit of length, pressure and 1/E

if __name__ == "__main__":
    print("inner_width,inner_height,wall,growth_times_E")
    for w, h in ((1, 1), (1, .6)):
        for t in (.02, .05, .1, .15, .2):
            print("%g,%g,%g,%.6g" % (w, h, t, run(w, h, t, n=8)))
